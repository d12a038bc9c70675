//! One line for each seed read from standard input: the digest of the advice drawn by it.

use std::io::BufRead;

fn main() {
    let seeds: Vec<u32> = std::io::stdin()
        .lock()
        .lines()
        .filter_map(|line| line.ok()?.trim().parse().ok())
        .collect();
    for seed in seeds {
        println!("{}", parity::digest(seed));
    }
}
