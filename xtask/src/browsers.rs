//! Finds Chromium and Firefox; as root on Debian, installs what is missing.

use crate::{run, say};
use std::path::{Path, PathBuf};
use std::process::Command;

/// A browser that the page is tested in.
struct Browser {
    /// How people call it.
    name: &'static str,
    /// The variable that names its program.
    variable: &'static str,
    programs: &'static [&'static str],
    debian_package: &'static str,
}

const CHROMIUM: Browser = Browser {
    name: "Chromium",
    variable: "CHROMIUM",
    programs: &[
        "chromium",
        "chromium-browser",
        "google-chrome",
        "google-chrome-stable",
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    ],
    debian_package: "chromium",
};

const FIREFOX: Browser = Browser {
    name: "Firefox",
    variable: "FIREFOX",
    programs: &[
        "firefox",
        "firefox-esr",
        "/Applications/Firefox.app/Contents/MacOS/firefox",
    ],
    debian_package: "firefox-esr",
};

/// Both browsers, as the environment that the browser tests read.
///
/// # Errors
/// One is missing and cannot be installed here; the message holds the command.
pub fn both() -> Result<Vec<(&'static str, PathBuf)>, String> {
    let missing: Vec<&Browser> = [&CHROMIUM, &FIREFOX]
        .into_iter()
        .filter(|browser| browser.found().is_none())
        .collect();
    if !missing.is_empty() {
        install(&missing)?;
    }
    [&CHROMIUM, &FIREFOX]
        .into_iter()
        .map(|browser| {
            let found = browser.found().ok_or_else(|| advice(&[browser]))?;
            Ok((browser.variable, found))
        })
        .collect()
}

/// Chromium alone, for pictures and audits.
///
/// # Errors
/// It is missing and cannot be installed here; the message holds the command.
pub fn chromium() -> Result<Vec<(&'static str, PathBuf)>, String> {
    if CHROMIUM.found().is_none() {
        install(&[&CHROMIUM])?;
    }
    let found = CHROMIUM.found().ok_or_else(|| advice(&[&CHROMIUM]))?;
    Ok(vec![(CHROMIUM.variable, found)])
}

impl Browser {
    fn found(&self) -> Option<PathBuf> {
        if let Some(named) = std::env::var_os(self.variable) {
            return Some(PathBuf::from(named)).filter(|path| path.is_file());
        }
        self.programs.iter().find_map(|program| {
            let path = Path::new(program);
            if path.is_absolute() {
                Some(path.to_path_buf()).filter(|path| path.is_file())
            } else {
                run::on_path(program)
            }
        })
    }
}

fn install(missing: &[&Browser]) -> Result<(), String> {
    let debian = Path::new("/etc/debian_version").is_file() && run::on_path("apt-get").is_some();
    if !debian || !is_root() {
        return Err(advice(missing));
    }
    let names: Vec<&str> = missing.iter().map(|browser| browser.name).collect();
    say::step(
        &format!("Installing {} from Debian", names.join(" and ")),
        || {
            let apt = || {
                let mut apt = Command::new("apt-get");
                apt.env("DEBIAN_FRONTEND", "noninteractive");
                apt
            };
            run::quiet(apt().args(["update", "-qq"]))?;
            let packages = missing.iter().map(|browser| browser.debian_package);
            run::quiet(
                apt()
                    .args([
                        "install",
                        "-y",
                        "-qq",
                        "--no-install-recommends",
                        "fonts-dejavu-core",
                    ])
                    .args(packages),
            )
            .map(drop)
            .map_err(|message| format!("{message}\n{}", advice(missing)))
        },
    )
}

fn is_root() -> bool {
    Command::new("id")
        .arg("-u")
        .output()
        .is_ok_and(|output| output.stdout.trim_ascii() == b"0")
}

fn advice(missing: &[&Browser]) -> String {
    let packages: Vec<&str> = missing
        .iter()
        .map(|browser| browser.debian_package)
        .collect();
    let lines: Vec<String> = missing
        .iter()
        .map(|browser| {
            let named = std::env::var_os(browser.variable);
            let wrong = named.map_or(String::new(), |path| {
                format!(
                    " ({} is {}, where no program stands)",
                    browser.variable,
                    path.display()
                )
            });
            format!(
                "  {}{wrong}: or set {} to its program",
                browser.name, browser.variable
            )
        })
        .collect();
    format!(
        "The page is tested in real browsers, and these are missing:\n{}\n\
         On Debian: sudo apt-get install --no-install-recommends {} fonts-dejavu-core\n\
         Elsewhere install them as usual and run the command again.",
        lines.join("\n"),
        packages.join(" ")
    )
}
