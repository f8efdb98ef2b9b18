//! Which names are taken, and which can't be told apart.

use panside_shop::name::{Hidden, LONGEST, Look, NameError, of_person, of_thing};

fn alike(one: &str, other: &str) -> bool {
    Look::of(one).is_like(&Look::of(other))
}

#[test]
fn a_name_is_kept_trimmed_with_single_spaces_and_composed() {
    for typed in ["R. Ode", "  R.  Ode ", "R.\tOde\n", "R.\u{a0}Ode", "R.\u{2003}\u{3000}Ode"] {
        assert_eq!(of_person(typed).as_deref(), Ok("R. Ode"), "{typed:?}");
    }
    // UAX #15, figure 3: D and a dot above compose to U+1E0A.
    assert_eq!(of_person("D\u{307}"), Ok("\u{1e0a}".into()));
}

#[test]
fn characters_that_nobody_sees_are_refused_with_their_place() {
    let cases = [
        ('\u{0}', Hidden::Control),
        ('\u{1b}', Hidden::Control),
        ('\u{9b}', Hidden::Control),
        ('\u{202e}', Hidden::Direction),
        ('\u{2066}', Hidden::Direction),
        ('\u{200f}', Hidden::Direction),
        ('\u{200b}', Hidden::Invisible),
        ('\u{200d}', Hidden::Invisible),
        ('\u{feff}', Hidden::Invisible),
        ('\u{ad}', Hidden::Invisible),
        ('\u{34f}', Hidden::Invisible),
        ('\u{fe0f}', Hidden::Invisible),
        ('\u{3164}', Hidden::Invisible),
        ('\u{2800}', Hidden::Invisible),
        ('\u{e0041}', Hidden::Invisible),
        ('\u{e000}', Hidden::Unassigned),
        ('\u{378}', Hidden::Unassigned),
    ];
    for (c, what) in cases {
        let error = NameError::Hidden { what, code: c.into(), place: 5 };
        assert_eq!(of_person(&format!(" R. O{c}de")), Err(error), "{c:?}");
    }
    let said = of_person("R. O\u{202e}de").unwrap_err().to_string();
    assert!(said.contains("U+202E") && said.contains("direction") && !said.contains('\u{202e}'), "{said}");
}

#[test]
fn a_person_needs_a_letter_and_a_tool_a_letter_or_a_digit() {
    assert_eq!(of_person(" \t"), Err(NameError::Missing));
    assert_eq!(of_person("47-11"), Err(NameError::NoLetter { name: "47-11".into() }));
    assert_eq!(of_thing("47-11").as_deref(), Ok("47-11"));
    assert_eq!(of_thing("--"), Err(NameError::NoLetterOrDigit { name: "--".into() }));
    for name in ["Åsa Öde", "Ειρήνη", "Нина", "小林", "עדה", "O’Neil-Pike Jr."] {
        assert_eq!(of_person(name).as_deref(), Ok(name));
    }
}

#[test]
fn a_name_may_be_sixty_characters_long() {
    assert_eq!(of_person(&"é".repeat(LONGEST)), Ok("é".repeat(LONGEST)));
    assert_eq!(of_person(&"é".repeat(LONGEST + 1)), Err(NameError::TooLong { chars: LONGEST + 1 }));
    let piled = format!("x{}", "\u{323}".repeat(LONGEST));
    assert!(matches!(of_person(&piled), Err(NameError::TooLong { .. })));
}

#[test]
fn spelling_case_and_width_tell_nobody_apart() {
    let spellings = [
        "R. Ode",
        "R.  Ode",
        "R Ode",
        "r. ode",
        "R.ODE",
        "R-Ode",
        "(R) Ode",
        "Ｒ． Ｏｄｅ",
        "Ⓡ Ode",
        "R. Оdе",
        "ᖇ. Ode",
        "R\u{2024} Ode",
        "R. Ode★",
        "R. O\u{200b}de",
        "R. Od\u{435}",
    ];
    for one in spellings {
        // ᖇ stands in the list of confusables beside R; it is drawn so in Unicode's own charts.
        assert!(alike("R. Ode", one), "{one}");
        assert!(alike(one, "R. Ode"), "{one}");
    }
}

#[test]
fn apostrophes_of_any_form_count_for_nothing() {
    for name in ["O'Neil", "O’Neil", "OʼNeil", "O`Neil", "ONeil", "oneil"] {
        assert!(alike("O'Neil", name), "{name}");
    }
}

/// Rows of CaseFolding.txt, Unicode 15.0 (Debian package unicode-data 15.0.0-1): `1E9E; F; 0073 0073`, `00DF; F; 0073
/// 0073`, `03C2; C; 03C3`, `0041; C; 0061`, `0416; C; 0436`, `FB01; F; 0066 0069`.
#[test]
fn case_folds_as_unicode_says() {
    for (one, other) in [
        ("Groẞ", "gross"),
        ("groß", "GROSS"),
        ("ΝΙΚΟΣ", "νικος"),
        ("Ada", "aDA"),
        ("Женя", "женЯ"),
        ("ﬁn", "FIN"),
    ] {
        assert!(alike(one, other), "{one} {other}");
    }
}

#[test]
fn a_letter_that_looks_latin_in_one_case_only_is_seen_in_both() {
    // Cyrillic capital ВО and Latin small bo: в itself looks like no Latin letter.
    assert!(alike("ВО Lind", "bo lind"));
    // Cyrillic capital І is drawn as l, its small і as i.
    assert!(alike("ІАN Pike", "ian pike"));
    assert!(alike("ian pike", "Ian Pike"));
    assert!(!alike("Ian Pike", "Lan Pike"));
}

/// What ICU calls confusable is confusable here too; what it tells apart stays apart.
#[test]
fn confusable_names_are_those_that_icu_calls_so() {
    let rows = include_str!("../fixtures/confusable.txt").lines().filter(|line| !line.starts_with('#'));
    let mut verdicts = [0, 0];
    for row in rows {
        let [one, other, verdict] = row.split(';').collect::<Vec<_>>().try_into().unwrap();
        assert_eq!(alike(one, other), verdict == "confusable", "{row}");
        verdicts[usize::from(verdict == "confusable")] += 1;
    }
    assert_eq!(verdicts, [11, 67], "rows that tell apart, rows that do not");
}
