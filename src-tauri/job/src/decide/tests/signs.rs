//! Who may sign what, and what lapses.

use super::*;

#[test]
fn a_permit_that_lapsed_closes_work_and_is_renewed_in_one_go() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.vehicle_actions(&["lower", "raise", "set_locks"]);
    let refused = bay.begin("drain").unwrap_err();
    assert_eq!(refused.message, refused_permit_lapsed("On locks, shaken, clear", "On the locks"));
    let signatures = vec![sign("on_locks", "Ada", Role::Technician)];
    assert_eq!(
        bay.ask(Command::SignAgain { signatures: Vec::new() }).unwrap_err().message,
        refused_no_signature()
    );
    bay.must(Command::SignAgain { signatures: signatures.clone() });
    assert_eq!(
        bay.ask(Command::SignAgain { signatures }).unwrap_err().message,
        refused_sign_valid("On locks, shaken, clear")
    );
    bay.begin("drain").unwrap();
}

#[test]
fn a_permit_cannot_be_signed_while_what_it_says_is_not_so() {
    let mut bay = Bay::open();
    bay.work_up_to("coil");
    bay.vehicle_actions(&["lower"]);
    let refused =
        bay.ask(Command::Sign { signature: sign("on_locks", "Ada", Role::Technician) }).unwrap_err();
    assert_eq!(refused.message, refused_sign_untrue("On locks, shaken, clear"));
    assert_eq!(refused.unmet, [unmet_value("lift", "on the floor", any_of(&["on the locks"]))]);
}

#[test]
fn a_service_writer_signs_as_one_and_nobody_else_does() {
    let mut bay = Bay::open();
    bay.work_up_to("photo");
    let told = |signatures: &[Signature]| work("go_ahead", &go_ahead(), signatures);
    let refused = bay.ask(told(&[])).unwrap_err();
    assert_eq!(refused.unmet, [missing_signature("The customer has said yes", "service_writer")]);
    let refused = bay.ask(told(&[sign("concern_told", "Ada", Role::Technician)])).unwrap_err();
    assert_eq!(refused.message, refused_sign_role("The customer has said yes", "service_writer"));
    let refused = bay.ask(told(&[sign("concern_told", "Nobody", Role::ServiceWriter)])).unwrap_err();
    assert_eq!(refused.message, refused_no_person());
    let refused = bay.ask(told(&[sign("concern_told", "Ada", Role::ServiceWriter)])).unwrap_err();
    assert_eq!(refused.message, refused_no_role("Ada", Role::ServiceWriter));
    let wim = sign("concern_told", "Wim", Role::ServiceWriter);
    let refused = bay.ask(told(&[wim.clone(), wim.clone()])).unwrap_err();
    assert_eq!(refused.message, refused_sign_twice("The customer has said yes"));
    bay.must(told(&[wim]));
}

#[test]
fn a_technicians_signature_is_given_by_who_works_the_step() {
    let mut bay = Bay::open();
    bay.work_up_to("go_ahead");
    bay.vehicle_actions(&["key_out", "raise", "set_locks"]);
    let refused = bay.ask(work("locks", &[], &[sign("on_locks", "Bo", Role::Technician)])).unwrap_err();
    assert_eq!(refused.message, refused_sign_other_person("On locks, shaken, clear", "Ada"));
    let refused = bay.ask(work("locks", &[], &[sign("pan_torqued", "Ada", Role::Technician)])).unwrap_err();
    assert_eq!(refused.message, refused_sign_not_asked("Pan torqued in both stages", "On the locks"));
    bay.begin("locks").unwrap();
    let early = EntryValue::SignOff(sign("on_locks", "Ada", Role::Technician));
    assert_eq!(
        bay.enter("locks", "shaken", early).unwrap_err().message,
        refused_sign_with_done("On locks, shaken, clear")
    );
}

#[test]
fn a_second_person_is_neither_who_began_the_step_nor_who_asks() {
    let mut bay = Bay::open();
    bay.work_up_to("pan_down");
    bay.work("verdict", &[("found", choice("chips"))], &[]);
    bay.begin("look_again").unwrap();
    bay.actor = technician("Bo");
    for name in ["Ada", "Bo"] {
        let signatures = vec![sign("second_look", name, Role::SecondPerson)];
        let refused = bay.ask(Command::Done { step: "look_again".into(), signatures }).unwrap_err();
        assert_eq!(refused.message, refused_sign_same_person("Chips looked at by two", name));
    }
    let signatures = vec![sign("second_look", "Cem", Role::Technician)];
    bay.must(Command::Done { step: "look_again".into(), signatures });
}

#[test]
fn who_began_a_step_is_no_second_person_under_any_name() {
    // Two spaces, a character without width, a Cyrillic letter: each looks like another name and is the same man.
    for name in ["A  da", "A\u{200b}da", "\u{410}da", "Bo"] {
        let mut bay = Bay::open();
        bay.work_up_to("pan_down");
        bay.work("verdict", &[("found", choice("chips"))], &[]);
        bay.begin("look_again").unwrap();
        bay.actor = technician("Bo");
        let ada = crate::people::Member { name: name.into(), roles: [Role::Technician].into() };
        bay.shop = crate::testing::shop_with([(person("Ada"), ada)]);
        let signatures = vec![sign("second_look", "Ada", Role::SecondPerson)];
        let refused = bay.ask(Command::Done { step: "look_again".into(), signatures }).unwrap_err();
        assert_eq!(refused.message, refused_sign_same_person("Chips looked at by two", name));
    }
}

#[test]
fn anybody_of_the_shop_can_be_the_second_person_and_signs_as_that_or_as_what_they_are() {
    for (name, role, refused) in [
        ("Wim", Role::SecondPerson, None),
        ("Wim", Role::ServiceWriter, None),
        ("Wim", Role::Technician, Some(refused_no_role("Wim", Role::Technician))),
        ("Nobody", Role::SecondPerson, Some(refused_no_person())),
    ] {
        let mut bay = Bay::open();
        bay.work_up_to("pan_down");
        bay.work("verdict", &[("found", choice("chips"))], &[]);
        let answer = bay.ask(work("look_again", &[], &[sign("second_look", name, role)]));
        assert_eq!(answer.err().map(|refusal| refusal.message), refused);
    }
}

#[test]
fn in_a_shop_of_one_the_same_person_signs_as_technician_and_as_service_writer() {
    let mut bay = Bay::open();
    let roles = [Role::Technician, Role::ServiceWriter];
    bay.shop = crate::testing::shop_with([member("Ada", &roles)]);
    bay.work_up_to("photo");
    let signed = bay.work("go_ahead", &go_ahead(), &[sign("concern_told", "Ada", Role::ServiceWriter)]);
    let Event::Introduced(introduced) = &signed[0] else { panic!("Ada is new as a service writer") };
    assert_eq!((introduced.person, introduced.role), (person("Ada"), Role::ServiceWriter));
}

#[test]
fn somebody_is_introduced_once_before_they_first_appear_and_again_under_a_new_name() {
    let mut bay = Bay::open();
    bay.work_up_to("photo");
    let kinds = |events: &[Event]| events.iter().map(Event::kind).collect::<Vec<_>>();
    let told = work("go_ahead", &go_ahead(), &[sign("concern_told", "Wim", Role::ServiceWriter)]);
    assert_eq!(
        kinds(&bay.must(told)),
        ["introduced", "begun", "entered", "entered", "done"],
        "Ada is known by the start"
    );
    bay.vehicle_actions(&["key_out", "raise", "set_locks"]);
    bay.actor = technician("Bo");
    assert_eq!(kinds(&bay.begin("locks").unwrap()), ["introduced", "begun"]);
    assert_eq!(kinds(&bay.must(Command::Leave { step: "locks".into() })), ["left"]);
    let bo = crate::people::Member { name: "Bo Marl".into(), roles: [Role::Technician].into() };
    bay.shop = crate::testing::shop_with([(person("Bo"), bo)]);
    assert_eq!(kinds(&bay.begin("locks").unwrap()), ["introduced", "begun"]);
    let step = bay.job.step(bay.job.procedure.names.step("locks").unwrap());
    let names: Vec<&str> = step.attempts.iter().map(|attempt| attempt.begun.name.as_str()).collect();
    assert_eq!(names, ["Bo", "Bo Marl"], "an earlier entry keeps the name of its day");
}
