//! `cargo xtask soak`: the tests with chance in them (kills, power cuts, flipped bits, merging, salvage; plans of drawn jobs)
//! again and again, each time from another seed, for as long as one likes. What fails comes back by its seed.

use std::path::Path;
use std::time::{Duration, Instant};

use crate::failure::Failure;
use crate::stage::{Stage, call, command, run_all};

/// The store's tests whose names begin so take their chance from `PANSIDE_SEED`.
const OF_STORE: [&str; 4] = ["damage::", "kill::", "power::", "salvaging::"];
/// And those of the plan.
const OF_PLAN: [&str; 1] = ["on_small_jobs"];
/// How long without `--minutes`.
const MINUTES: u64 = 10;

/// What is asked for.
struct Asked {
    minutes: u64,
    /// One round from this seed, in place of many.
    seed: Option<u64>,
}

/// `cargo xtask soak`, with its options.
///
/// # Errors
/// When an option isn't known, the tests don't build, or one fails.
pub fn soak(root: &Path, options: &[&str]) -> Result<(), Failure> {
    let asked = read(options)?;
    let work = move |root: &Path| match asked.seed {
        Some(seed) => round(root, seed),
        None => rounds(root, Duration::from_secs(asked.minutes * 60)),
    };
    run_all(root, &[Stage::new("soak", "try kills, cuts and flips by chance", work)])
}

fn read(options: &[&str]) -> Result<Asked, Failure> {
    let mut asked = Asked { minutes: MINUTES, seed: None };
    for pair in options.chunks(2) {
        match pair {
            ["--minutes", number] if number.parse::<u64>().is_ok() => {
                asked.minutes = number.parse().unwrap_or(MINUTES);
            }
            ["--seed", number] if number.parse::<u64>().is_ok() => asked.seed = number.parse().ok(),
            _ => return Err(Failure::usage(&format!("soak does not know `{}`", pair.join(" ")))),
        }
    }
    Ok(asked)
}

fn rounds(root: &Path, time: Duration) -> Result<(), Failure> {
    let began = Instant::now();
    let first = u64::from(std::process::id()) << 20;
    for seed in first.. {
        println!("seed {seed}: `cargo xtask soak --seed {seed}` brings this round back");
        round(root, seed)?;
        if began.elapsed() >= time {
            println!("{} rounds, nothing found", seed - first + 1);
            break;
        }
    }
    Ok(())
}

fn round(root: &Path, seed: u64) -> Result<(), Failure> {
    for (suite, tests) in [("store", &OF_STORE[..]), ("plan", &OF_PLAN[..])] {
        let words = ["test", "--workspace", "--quiet", "--test", suite, "--"];
        let mut called = command(root, "cargo", &[&words[..], tests].concat());
        called.env("PANSIDE_SEED", seed.to_string());
        call(called)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_and_seed_are_read_and_all_else_is_refused() -> Result<(), Failure> {
        assert_eq!(read(&["--minutes", "3"])?.minutes, 3);
        assert_eq!(read(&["--seed", "7"])?.seed, Some(7));
        assert!(matches!(read(&["--minutes", "soon"]), Err(Failure::Usage(_))));
        assert!(matches!(read(&["--seed"]), Err(Failure::Usage(_))));
        Ok(())
    }
}
