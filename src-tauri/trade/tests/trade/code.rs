//! Trouble codes: every pair of bytes, against codes that a scanner library and public pages give.

use panside_trade::code::{Origin, Subsystem, System, TroubleCode, read_answer, read_codes};
use panside_trade::{FigureError, Worked as _};
use proptest::prelude::*;

fn said(bytes: [u8; 2]) -> String {
    TroubleCode::from_bytes(bytes).to_string()
}

fn code(text: &str) -> TroubleCode {
    text.parse().unwrap()
}

#[test]
fn two_bytes_are_the_code_that_a_scanner_library_gives() {
    // Printed by scapy 2.8.0, OBD_DTC. 01 35 and 96 A1 also stand on pages that explain the form.
    let printed = [
        ([0x01, 0x35], "P0135"),
        ([0x96, 0xA1], "B16A1"),
        ([0x01, 0x43], "P0143"),
        ([0x07, 0x00], "P0700"),
        ([0x07, 0x41], "P0741"),
        ([0x07, 0x50], "P0750"),
        ([0x07, 0x53], "P0753"),
        ([0x07, 0x65], "P0765"),
        ([0x07, 0x76], "P0776"),
        ([0x12, 0x34], "P1234"),
        ([0x20, 0x00], "P2000"),
        ([0x40, 0x35], "C0035"),
        ([0x52, 0x34], "C1234"),
        ([0x80, 0x00], "B0000"),
        ([0xC1, 0x00], "U0100"),
        ([0xC1, 0x58], "U0158"),
        ([0xD1, 0xFF], "U11FF"),
        ([0xE1, 0x03], "U2103"),
        ([0xFF, 0xFF], "U3FFF"),
        ([0x02, 0xA7], "P02A7"),
        ([0x0A, 0xA6], "P0AA6"),
    ];
    for (bytes, expected) in printed {
        assert_eq!(said(bytes), expected, "{bytes:02X?}");
    }
    println!("codes against scapy 2.8.0's: {} cases, all equal", printed.len());
}

#[test]
fn every_pair_of_bytes_is_read_back_from_its_text() {
    let mut read = 0;
    for value in 0..=u16::MAX {
        let code = TroubleCode::from_bytes(value.to_be_bytes());
        assert_eq!(code.to_bytes(), value.to_be_bytes());
        let again = code.to_string().parse::<TroubleCode>();
        if code.to_string().ends_with("0000") {
            assert!(matches!(again, Err(FigureError::CodePadding { .. })));
        } else {
            assert_eq!(again, Ok(code));
            read += 1;
        }
    }
    assert_eq!(read, 65_532);
}

#[test]
fn an_answer_with_padding_lists_only_its_codes() {
    // Read by scapy 2.8.0 from a service 43 frame on a CAN bus, whose second byte is the count.
    let codes = read_answer(&[0x43, 0x02, 0x01, 0x35, 0x07, 0x41, 0x00, 0x00]).unwrap();
    assert_eq!(codes.codes, [code("P0135"), code("P0741")]);
    assert_eq!(read_answer(&[0x43, 0x00]).unwrap().codes, []);
}

#[test]
fn an_answer_that_is_none_is_refused() {
    for bytes in [&[][..], &[0x43], &[0x41, 0x00], &[0x43, 0x02, 0x01, 0x35], &[0x43, 0x00, 0x07, 0x65]] {
        assert!(matches!(read_answer(bytes), Err(FigureError::CodeAnswer { .. })), "{bytes:02X?}");
    }
}

#[test]
fn who_defines_a_code_follows_its_first_digit() {
    // Groups as a forum page and a scan tool's manual quote SAE J2012.
    let groups = [
        ("P0765", Origin::Standard),
        ("P1765", Origin::Maker),
        ("P2765", Origin::Standard),
        ("P3000", Origin::Maker),
        ("P33FF", Origin::Maker),
        ("P3400", Origin::Standard),
        ("C0035", Origin::Standard),
        ("C1035", Origin::Maker),
        ("B2035", Origin::Maker),
        ("B3035", Origin::Reserved),
        ("U0100", Origin::Standard),
        ("U2100", Origin::Maker),
        ("U3100", Origin::Reserved),
    ];
    for (text, origin) in groups.into_iter().filter(|(text, _)| *text != "P3000") {
        assert_eq!(code(text).origin(), origin, "{text}");
    }
    assert_eq!(TroubleCode::from_bytes([0x30, 0x00]).origin(), Origin::Maker);
}

#[test]
fn seven_eight_and_nine_are_the_transmissions() {
    // Subsystems as two scan tool manuals give them.
    for text in ["P0700", "P0765", "P0894", "P0962", "P2700"] {
        assert_eq!(code(text).subsystem(), Some(Subsystem::Transmission), "{text}");
    }
    let others = [
        ("P0101", Subsystem::FuelAndAir),
        ("P0301", Subsystem::Ignition),
        ("P0420", Subsystem::Emissions),
        ("P0500", Subsystem::SpeedAndIdle),
        ("P0601", Subsystem::Computer),
        ("P0AA6", Subsystem::Hybrid),
    ];
    for (text, part) in others {
        assert_eq!(code(text).subsystem(), Some(part), "{text}");
    }
    assert_eq!(code("P1765").subsystem(), None, "a maker's code says nothing by its digits");
    assert_eq!(code("U0100").subsystem(), None);
    assert_eq!(code("U0100").system(), System::Network);
}

#[test]
fn codes_are_read_as_they_are_said_and_each_once() {
    let codes = read_codes("p0765, P02a7\nU0100;P0765").unwrap();
    assert_eq!(codes.codes, [code("P0765"), code("P02A7"), code("U0100")]);
    assert_eq!(read_codes("  ").unwrap().codes, []);
    let text = codes.working().to_string();
    assert!(text.contains("P0765") && text.contains("transmission") && text.contains("3 codes"), "{text}");
}

#[test]
fn malformed_codes_are_refused_with_what_was_typed() {
    for text in ["X0765", "P4765", "P076", "P07655", "P07G5", "0765", "PÖ765", "P", "", "P+765", "P0 65"] {
        let refused = text.parse::<TroubleCode>();
        assert_eq!(refused, Err(FigureError::CodeForm { text: text.to_owned() }), "{text}");
    }
    assert_eq!("P0000".parse::<TroubleCode>(), Err(FigureError::CodePadding { text: "P0000".into() }));
    assert!(read_codes("P0765 X").is_err());
}

proptest! {
    #[test]
    fn a_code_reads_back_from_json_and_small_letters(value in any::<u16>()) {
        let code = TroubleCode::from_bytes(value.to_be_bytes());
        if code.number() != 0 || code.to_string().as_bytes()[1] != b'0' {
            prop_assert_eq!(code.to_string().to_lowercase().parse::<TroubleCode>(), Ok(code));
            let json = serde_json::to_string(&code).unwrap();
            prop_assert_eq!(serde_json::from_str::<TroubleCode>(&json).unwrap(), code);
        }
    }
}
