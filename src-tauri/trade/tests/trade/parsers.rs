//! Whatever is typed, scanned or received, nothing panics, and what is taken makes sense.

use panside_trade::Worked as _;
use panside_trade::bolt::{Grade, Thread};
use panside_trade::code::{TroubleCode, read_answer, read_codes};
use panside_trade::coil::parse_shown;
use panside_trade::units::Unit;
use panside_trade::vin::read_vin;
use proptest::prelude::*;

proptest! {
    #[test]
    fn any_text_is_answered(text in any::<String>()) {
        if let Ok(code) = text.parse::<TroubleCode>() {
            prop_assert_eq!(code.to_string(), text.trim().to_uppercase());
        }
        if let Ok(codes) = read_codes(&text) {
            prop_assert!(!codes.working().to_string().is_empty());
        }
        let vin = read_vin(&text);
        prop_assert_eq!(&vin.typed, &text);
        prop_assert!(!vin.working().to_string().is_empty());
        prop_assert_eq!(vin.fits(), vin.problems.is_empty());
        if let Ok(thread) = text.parse::<Thread>() {
            prop_assert!(thread.stress_area() > 0.0);
        }
        let _ = (text.parse::<Grade>(), text.parse::<Unit>(), parse_shown(&text));
    }

    #[test]
    fn any_text_near_to_a_number_is_answered(text in "[0-9A-Za-z°ÄßIOQıİ \u{2212}.,:-]{0,20}") {
        let vin = read_vin(&text);
        prop_assert!(vin.suggestions.len() <= 12);
        let _ = (read_codes(&text), text.parse::<Thread>(), parse_shown(&text));
    }

    #[test]
    fn any_text_near_to_a_thread_is_answered(text in "[Mm]?[0-9.,]{0,5}[xX×]?[0-9.,-]{0,5}") {
        if let Ok(thread) = text.parse::<Thread>() {
            let again: Thread = thread.to_string().parse().unwrap();
            prop_assert!((again.diameter().millimetres() - thread.diameter().millimetres()).abs() < 0.01);
        }
    }

    #[test]
    fn any_seventeen_characters_are_answered(text in "[0-9A-Z]{17}") {
        let vin = read_vin(&text);
        prop_assert!(vin.years.len() <= 1 && vin.sum.is_none_or(|sum| sum < 1000));
    }

    #[test]
    fn any_bytes_are_answered(bytes in prop::collection::vec(any::<u8>(), 0..20), count in any::<u8>()) {
        let _ = read_answer(&bytes);
        let framed: Vec<u8> = [0x43, count].into_iter().chain(bytes.iter().copied()).collect();
        if let Ok(codes) = read_answer(&framed) {
            prop_assert!(codes.codes.len() <= usize::from(count));
            prop_assert!(codes.codes.iter().all(|code| !code.is_padding()));
        }
    }
}
