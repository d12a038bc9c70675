# How this language writes numbers. Plural families: english, french, czech, polish, russian, none.
locale-name = English
locale-decimal-sign = .
locale-group-sign = { "\u202F" }
locale-plural = english

# Quantities
measure-about = about { $value } (give or take { $spread })
measure-minutes = { $value } min
measure-m = { $value } m
measure-yd = { $value } yd
measure-mm = { $value } mm
measure-cm = { $value } cm
measure-in = { $value }{ "\u202F" }in
measure-ft = { $value } ft
measure-g = { $value } g
measure-oz = { $value } oz
measure-kg = { $value } kg
measure-lb = { $value } lb
measure-gr = { $value } gr
measure-m-s = { $value } m/s
measure-fps = { $value } ft/s
measure-celsius = { $value } °C
measure-fahrenheit = { $value } °F
measure-mrad = { $value } mrad
measure-moa = { $value } MOA

# Price bands of the sight alone, in euro as the common yardstick
price-a = under 250 €
price-b = 250 to 600 €
price-c = 600 to 1200 €
price-d = 1200 to 2200 €
price-e = over 2200 €
