//! The shop's own checklists on the command line.

use std::path::Path;

use serde_json::Value;

use crate::support::{Desk, Said, cli, script};

/// A desk whose store has people, and the small checklist that `new-checklist` writes.
fn desk() -> Desk {
    let desk = Desk::new();
    let walked = desk.walk(&script("level-high"));
    assert_eq!(walked.code, 0, "{}\n{}", walked.out, walked.err);
    let written = cli(&["new-checklist".as_ref(), desk.path("our-bolts.checklist.json").as_os_str()]);
    assert_eq!(written.code, 0, "{}", written.err);
    desk
}

fn adopt(desk: &Desk, file: &Path, who: &str) -> Said {
    let store = desk.path("bay");
    cli(&[
        "store".as_ref(),
        "adopt".as_ref(),
        store.as_os_str(),
        file.as_os_str(),
        "--who".as_ref(),
        who.as_ref(),
    ])
}

fn list(desk: &Desk) -> Value {
    let store = desk.path("bay");
    let said = cli(&["store".as_ref(), "checklists".as_ref(), store.as_os_str(), "--json".as_ref()]);
    assert_eq!(said.code, 0, "{}", said.err);
    serde_json::from_str(&said.out).unwrap()
}

#[test]
fn a_checklist_is_adopted_by_one_of_the_shop_listed_and_handed_out_as_it_came() {
    let desk = desk();
    let file = desk.path("our-bolts.checklist.json");
    adopt(&desk, &file, "Nobody").refuses(1, "Nobody of this shop is called \"Nobody\"");
    let done = adopt(&desk, &file, "R. Ode");
    assert_eq!(done.code, 0, "{}\n{}", done.out, done.err);
    assert!(done.out.contains("R. Ode adopts the checklist \"our-bolts\", revision 1."), "{}", done.out);
    let listed = list(&desk);
    let line = &listed["checklists"][0];
    assert_eq!((&line["offer"]["id"], &line["adopted"]), (&"our-bolts".into(), &true.into()));
    let (store, out) = (desk.path("bay"), desk.path("out.json"));
    let written = cli(&[
        "store".as_ref(),
        "checklist".as_ref(),
        store.as_os_str(),
        "our-bolts".as_ref(),
        "--out".as_ref(),
        out.as_os_str(),
    ]);
    assert_eq!(written.code, 0, "{}", written.err);
    assert_eq!(std::fs::read(out).unwrap(), std::fs::read(file).unwrap());
}

#[test]
fn what_is_refuted_or_does_not_load_is_not_adopted() {
    let desk = desk();
    let text = std::fs::read_to_string(desk.path("our-bolts.checklist.json")).unwrap();
    // Nothing keeps anybody from under the vehicle.
    let kept = "\"needs\": \"lift = on_locks\",\n          \"permits\": [\"locks_seen\"],\n";
    let unsafe_one = text.replace(kept, "\"after\": [],").replace("\"after\": [\"on_locks\"],", "");
    assert_ne!(unsafe_one, text);
    let file = desk.write("unsafe.checklist.json", unsafe_one);
    adopt(&desk, &file, "R. Ode").refuses(1, "The shortest way there: ");
    let file = desk.write("wrong.checklist.json", text.replace("panside-checklist/1", "panside-checklist/0"));
    adopt(&desk, &file, "R. Ode").refuses(3, "panside-checklist/0");
    let listed = list(&desk);
    assert!(listed["checklists"].as_array().unwrap().iter().all(|line| line["adopted"] == false));
}
