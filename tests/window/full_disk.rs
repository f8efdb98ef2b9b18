//! A disk that is full while a photo is saved.

use std::path::Path;
use std::process::Command;

use panside_tests::window::{Place, Result, Trouble, run};

/// The line after which somebody is in the step `identify`.
const IN_IDENTIFY: usize = 1;

/// Says to the test that it may mount what it likes: nobody else sees it.
const OWN_MOUNTS: &str = "PANSIDE_OWN_MOUNTS";

const NAME: &str = "full_disk::a_full_disk_is_told_in_place_and_the_photo_goes_in_once_there_is_room";

#[test]
fn a_full_disk_is_told_in_place_and_the_photo_goes_in_once_there_is_room() -> Result {
    if std::env::var_os(OWN_MOUNTS).is_none() {
        return again_with_own_mounts();
    }
    let place = Place::empty(None)?;
    let store = place.store();
    small_disk(&store)?;
    place.walk(IN_IDENTIFY)?;
    let mut window = place.open()?;
    let row = "[data-row=\"identify/odometer\"]";
    window.tap_selector(row)?;
    window.tap("7")?;
    window.tap_words("back")?;
    window.tap_selector("[data-row=\"identify/photo_as_found\"]")?;
    let filler = fill(&store)?;
    window.give_photo("photo_as_found", place.photo())?;
    let said = window.left("Photo")?;
    assert!(
        said.as_ref().is_some_and(|said| said.to_lowercase().contains("full") || said.contains("space")),
        "a full disk is told on the pad: {said:?}"
    );
    window.tap_words("back")?;
    assert!(window.shows(row, "7 km")?, "what was typed is kept");

    std::fs::remove_file(&filler).map_err(|source| Trouble::File {
        doing: "Removing",
        path: filler.clone(),
        source,
    })?;
    let again = window.words.say("sheet-try-again")?;
    if window.offers(&again)? {
        window.tap(&again)?;
    }
    // Reading the store anew, the window comes back to the pad that was open when it last could be written.
    if window.see()?.dialogs.is_empty() {
        window.tap_selector("[data-row=\"identify/photo_as_found\"]")?;
    }
    window.give_photo("photo_as_found", place.photo())?;
    assert_eq!(window.left("Photo")?, None, "the same photo is entered once there is room");
    assert!(window.shows(row, "7 km")?, "what was typed is still kept");
    window.close().map(drop)
}

/// Runs this test once more where it can mount: as root with mounts of its own, else as root of a world of its own.
fn again_with_own_mounts() -> Result {
    let own =
        std::env::current_exe().map_err(|source| Trouble::Start { program: "this test".into(), source })?;
    let ways = [["-m"].as_slice(), &["-U", "-r", "-m"]];
    let can = |way: &&[&str]| run(Command::new("unshare").args(*way).arg("true")).is_ok();
    let way = ways.into_iter().find(can).ok_or_else(|| {
        Trouble::wrong(
            "A small disk can't be mounted here: neither `unshare -m` nor `unshare -Urm` is allowed. Run the tests \
             as root, or allow user namespaces (sysctl kernel.unprivileged_userns_clone=1).",
        )
    })?;
    let mut test = Command::new("unshare");
    test.args(way).arg(own).args(["--exact", NAME, "--nocapture"]).env(OWN_MOUNTS, "yes");
    let said = run(&mut test)?;
    assert!(said.contains("1 passed"), "the test did not run: {said}");
    Ok(())
}

/// Makes a folder with a disk of its own, of 4 MiB.
fn small_disk(folder: &Path) -> Result {
    std::fs::create_dir(folder).map_err(|source| Trouble::File {
        doing: "Making the folder",
        path: folder.to_owned(),
        source,
    })?;
    run(Command::new("mount").args(["-t", "tmpfs", "-o", "size=4m", "tmpfs"]).arg(folder)).map(drop)
}

/// Fills the disk to its last page.
fn fill(store: &Path) -> Result<std::path::PathBuf> {
    let filler = store.join("filler");
    let mut file = std::fs::File::create(&filler).map_err(|source| Trouble::File {
        doing: "Making",
        path: filler.clone(),
        source,
    })?;
    // It ends with "no space left on device"; that is what it is for.
    while std::io::Write::write_all(&mut file, &[0; 4096]).is_ok() {}
    Ok(filler)
}
