//! The real window, walked by tapping: what a person would do, on a screen in memory.
//!
//! It is left out of `cargo test --workspace`; the stage `window` of `cargo xtask test` runs it once the programs are
//! built.

use panside_tests::window::{Job, Programs, Result, Screen, Window, demo_photo, folder, root};

#[test]
fn the_demo_job_walked_by_tapping_ends_in_a_readable_record() -> Result {
    let programs = Programs::find()?;
    let (screen, place) = (Screen::start()?, folder()?);
    let script = root().join("checklists/demo/demo.walk.json");
    let (photo, store) = (place.path().join("photo.jpg"), place.path().join("bay"));
    demo_photo(&photo)?;
    let from: usize = std::env::var("FROM").ok().and_then(|t| t.parse().ok()).unwrap_or(1);
    let to: usize = std::env::var("TO").ok().and_then(|t| t.parse().ok()).unwrap_or(999);
    programs.walk(&script, &store, from - 1, &photo)?;
    let mut window = Window::open(&screen, &programs, &store)?;
    let mut job = Job::new(&script, &photo)?;
    for n in from..=to.min(job.script().lines.len()) {
        let t = std::time::Instant::now();
        job.walk(&mut window, n, n)?;
        println!("{n} {:?}", t.elapsed());
    }
    window.take_times()?;
    println!("{} refused, not offered {:?}", job.refused, job.not_offered);
    println!("{}", window.close()?.to_text());
    Ok(())
}
