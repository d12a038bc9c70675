//! The saved key of an answer that is one of a few words, and back.

use core::fmt::Debug;

use super::answers::{
    AngleUnit, Annoyance, Attitude, Base, Carry, Comb, Cover, Detail, DistanceHabit, Glasses, Lens,
    LitMark, Manner, Muzzle, PriceBand, RifleKind, StopTime, Units, ZoomHabit,
};

/// An answer that is one of a few words.
pub(crate) trait Choice: Copy + Debug + 'static {
    /// All of them, the usual one first.
    const ALL: &'static [Self];
}

macro_rules! choices {
    ($($choice:ident: $($name:ident)*;)*) => {
        $(impl Choice for $choice {
            const ALL: &'static [Self] = &[$(Self::$name),*];
        })*
        #[cfg(test)]
        const COUNTS: &[(&str, usize)] = &[$((stringify!($choice), <$choice>::ALL.len())),*];
    };
}

choices! {
    Units: Metric Imperial;
    Manner: Bench PronePack SeatRail TwoPointSticks SingleStick Kneeling WalkingUp StandingFree
        Driven;
    StopTime: Daylight Sunset HalfHourAfterSunset HourAfterSunset EndOfSeeing Moon LitRange;
    Cover: Open Edge Ride BareWood InLeaf DenseConifer;
    Lens: Natural Cataract Replaced;
    Glasses: NoGlasses Distance Varifocal ThickFrame;
    RifleKind: Bolt SingleShot Double StraightStock Lever SlugGun SpringAir PrechargedAir
        MuzzleLoader ForwardRail;
    Muzzle: Bare Moderator Brake;
    Comb: Low Right Adjustable;
    Base: SlottedRail NarrowSlots SmallDovetail WideDovetail TwoPiece Bare;
    PriceBand: A B C D E;
    Attitude: LittleAsSensible WhatItIsWorth NoLimit;
    ZoomHabit: Never BeforeSitting EachShot;
    Detail: BodyShape Young Antler;
    Carry: Short FewKm AllDayHill;
    DistanceHabit: DeadOn Marks Dial DialAndMarks;
    AngleUnit: Mrad Moa Neither;
    LitMark: Wanted Indifferent NotWanted NotAllowed;
    Annoyance: TooDark TooNarrow TooHeavy HardToFindPicture NotFarEnough;
}

/// The key of an answer, as it is saved.
pub(crate) fn key_of<T: Choice>(value: &T) -> String {
    crate::plain::key(value)
}

/// The answer with this key.
pub(crate) fn from_key<T: Choice>(key: &str) -> Option<T> {
    T::ALL.iter().copied().find(|each| key_of(each) == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every choice that the wire type has is in the table: the sources are counted.
    #[test]
    fn every_choice_is_in_the_table() {
        let source = include_str!("answers.rs");
        let mut enums = 0;
        for part in source.split("pub enum ").skip(1) {
            let (name, rest) = part.split_once(" {").unwrap();
            let (body, _) = rest.split_once("\n}").unwrap();
            let count = body.lines().filter(|line| line.ends_with(',')).count();
            assert!(COUNTS.contains(&(name, count)), "{name}: {count}");
            enums += 1;
        }
        assert_eq!(enums, COUNTS.len());
    }
}
