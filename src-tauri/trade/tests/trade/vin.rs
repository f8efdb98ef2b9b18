//! Vehicle identification numbers against the worked samples of the rule and of public pages.

use panside_trade::Worked as _;
use panside_trade::vin::{Vin, VinProblem, read_vin};
use proptest::prelude::*;

/// Numbers with their sums, each worked out where it stands.
const PUBLISHED: [(&str, u32); 5] = [
    // 49 CFR 565, table V: "411/11 = 37 4/11".
    ("1G4AH59H45G118341", 411),
    // NHTSA, outline for new manufacturers, p. 18.
    ("1J9RP1A36A1644345", 314),
    // The encyclopedia's worked example, also in vininfo's README.
    ("1M8GDM9AXKP042788", 351),
    // A test number on a public page; its sum by hand.
    ("11111111111111111", 89),
    // The encyclopedia's text: valid with a leading 5; its sum by hand.
    ("5GZCZ43D13S812715", 408),
];

#[test]
fn published_numbers_have_the_published_sums() {
    for (text, sum) in PUBLISHED {
        let vin = read_vin(text);
        assert_eq!(vin.sum, Some(sum), "{text}");
        assert!(vin.fits(), "{text}: {:?}", vin.problems);
        assert!(vin.suggestions.is_empty());
    }
    println!("published VIN sums: {} cases, all equal", PUBLISHED.len());
}

#[test]
fn a_leading_s_for_5_does_not_collide() {
    // The encyclopedia calls it a colliding number; its own rule says no, and so does vininfo 1.11.0.
    let vin = read_vin("SGZCZ43D13S812715");
    assert_eq!(vin.problems, [VinProblem::CheckDigit { found: '1', expected: 'X' }]);
    let meant = vin.suggestions.iter().find(|suggestion| suggestion.vin == "5GZCZ43D13S812715").unwrap();
    assert_eq!(meant.changes, [(1, 'S', '5')]);
}

#[test]
fn letters_that_no_number_has_are_placed_and_put_right() {
    let vin = read_vin("IM8GDM9AXKPO42788");
    assert_eq!(
        vin.problems,
        [
            VinProblem::Character { position: 1, found: 'I' },
            VinProblem::Character { position: 12, found: 'O' }
        ]
    );
    assert_eq!(vin.suggestions[0].vin, "1M8GDM9AXKP042788");
    assert_eq!(vin.suggestions[0].changes, [(1, 'I', '1'), (12, 'O', '0')]);
    let q = read_vin("1M8GDM9AXKPQ42788");
    assert_eq!(q.suggestions[0].vin, "1M8GDM9AXKP042788");
}

#[test]
fn swapped_neighbours_are_found() {
    let vin = read_vin("1M8GDM9AXKP047288");
    assert!(vin.suggestions.iter().any(|suggestion| suggestion.vin == "1M8GDM9AXKP042788"));
}

#[test]
fn small_letters_spaces_and_the_bar_codes_i_are_taken_off() {
    for text in [" 1m8gdm9axkp042788 ", "1M8GDM9A XKP 042788", "1M8-GDM9AXKP-042788", "I1M8GDM9AXKP042788"] {
        assert_eq!(read_vin(text).vin, "1M8GDM9AXKP042788", "{text}");
    }
}

#[test]
fn a_wrong_length_is_told_and_nothing_else() {
    for text in ["", "1M8GDM9AXKP04278", "1M8GDM9AXKP0427888", "1M8GDM9AXKP042788123"] {
        let vin = read_vin(text);
        assert_eq!(vin.problems, [VinProblem::Length { found: text.len() }], "{text}");
        assert!(vin.suggestions.is_empty() && vin.years.is_empty() && vin.sum.is_none());
    }
}

#[test]
fn the_model_year_follows_place_10_and_for_light_vehicles_place_7() {
    // The cycle of 49 CFR 565 as encyclopedia copies give it, and NHTSA's rule for place 7.
    assert_eq!(read_vin("1J9RP1A36A1644345").years, [2010]);
    assert_eq!(read_vin("1G4AH59H45G118341").years, [2005]);
    assert_eq!(read_vin("1M8GDM9AXKP042788").years, [1989]);
    assert_eq!(read_vin("1M8GDM9AXKP042788").years_any_weight, [1989, 2019]);
    let table = [('A', 1980), ('K', 1989), ('L', 1990), ('Y', 2000), ('1', 2001), ('9', 2009)];
    for (code, year) in table {
        let text: String = format!("1M8GDM9AX{code}P042788");
        assert_eq!(read_vin(&text).years_any_weight, [year, year + 30], "{code}");
    }
    // All zeros pass the sum, but no model year is a zero.
    let zeros = read_vin("00000000000000000");
    assert_eq!((zeros.sum, zeros.problems), (Some(0), vec![VinProblem::ModelYear { found: '0' }]));
}

#[test]
fn a_number_says_how_it_was_judged_and_reads_back() {
    let vin = read_vin("1M8GDM9AXKP042788");
    let text = vin.working().to_string();
    assert!(text.contains("351 mod 11 = X") && text.contains("1989 for a light vehicle"), "{text}");
    let json = serde_json::to_string(&vin).unwrap();
    assert_eq!(serde_json::from_str::<Vin>(&json).unwrap(), vin);
    let wrong = read_vin("1M8GDM9A1KP042788").working().to_string();
    assert!(wrong.contains("Outside North America"), "{wrong}");
}

proptest! {
    #[test]
    fn one_wrong_character_of_another_value_is_always_caught(
        at in 0..17_usize,
        other in prop::sample::select("0123456789ABCDEFGHJKLMNPRSTUVWXYZ".chars().collect::<Vec<_>>()),
    ) {
        // Weights share no factor with 11, so only a character of the same value slips through.
        let mut characters: Vec<char> = "1M8GDM9AXKP042788".chars().collect();
        let before = characters[at];
        characters[at] = other;
        let text: String = characters.into_iter().collect();
        let vin = read_vin(&text);
        let groups = ["1AJ", "2BKS", "3CLT", "4DMU", "5ENV", "6FW", "7GPX", "8HY", "9RZ"];
        let same_value = before == other || groups.iter().any(|group| group.contains(before) && group.contains(other));
        if at != 8 && !same_value {
            let told = vin.problems.iter().any(|problem| matches!(problem, VinProblem::CheckDigit { .. }));
            prop_assert!(told, "{text}");
        }
    }

    #[test]
    fn every_suggestion_fits_and_differs(text in "[0-9A-HJ-NPR-Z]{17}") {
        for suggestion in read_vin(&text).suggestions {
            prop_assert!(read_vin(&suggestion.vin).fits());
            prop_assert!(!suggestion.changes.is_empty());
        }
    }
}
