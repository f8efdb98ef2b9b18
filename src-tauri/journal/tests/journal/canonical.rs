//! The header's canonical bytes against RFC 8785, in two steps: the general writer `serde_json_canonicalizer` is
//! checked against the RFC's own vectors, then the header's bytes are checked against that writer.

use std::collections::BTreeMap;

use panside_journal::{
    BootId, DeviceId, EpochId, EventId, Format, Hash, Header, JobId, JournalError, PersonId, RequestId,
    Subject,
};
use proptest::prelude::*;
use serde_json::{Value, json};
use uuid::Uuid;

/// RFC 8785, 3.2.3: the values in the order of their sorted keys. UTF-16 order puts the emoji before U+FB33.
#[test]
fn keys_are_sorted_as_in_the_rfc() {
    let input = json!({
        "\u{20ac}": "Euro Sign",
        "\r": "Carriage Return",
        "\u{fb33}": "Hebrew Letter Dalet With Dagesh",
        "1": "One",
        "\u{1f600}": "Emoji: Grinning Face",
        "\u{80}": "Control",
        "\u{f6}": "Latin Small Letter O With Diaeresis",
    });
    let written = serde_json_canonicalizer::to_string(&input).unwrap();
    let order = [
        "Carriage Return",
        "One",
        "Control",
        "Latin Small Letter O With Diaeresis",
        "Euro Sign",
        "Emoji: Grinning Face",
        "Hebrew Letter Dalet With Dagesh",
    ];
    let places: Vec<usize> = order.iter().map(|value| written.find(value).unwrap()).collect();
    assert!(places.is_sorted(), "{written}");
}

/// RFC 8785 appendices C and E, as the crate serde_jcs 0.2.0 keeps them under `tests/fixtures`.
#[test]
fn objects_come_out_as_in_the_rfc() {
    for canonical in [
        r#"{"address":"2000 Sunset Boulevard","city":"Los Angeles","name":"John Doe","state":"CA","zip":"90001"}"#,
        r#"{"big":"055","time":"2019-01-28T07:45:10Z","val":3.5}"#,
    ] {
        let members: BTreeMap<String, Value> = serde_json::from_str(canonical).unwrap();
        // Spelt backwards and with white space, so that the writer has something to do.
        let loose: Vec<String> = members.iter().rev().map(|(k, v)| format!(" \"{k}\" : {v}")).collect();
        let value: Value = serde_json::from_str(&format!("{{{}}}", loose.join(" ,\n"))).unwrap();
        assert_eq!(serde_json_canonicalizer::to_string(&value).unwrap(), canonical);
    }
}

/// RFC 8785 appendix B (as in the crate jcs-admit 0.1.3, `appendix-b.tsv`): bits of a double, and its JSON.
#[test]
fn numbers_come_out_as_in_the_rfc() {
    let vectors = [
        (0x0000_0000_0000_0000, "0"),
        (0x8000_0000_0000_0000, "0"),
        (0x0000_0000_0000_0001, "5e-324"),
        (0x8000_0000_0000_0001, "-5e-324"),
        (0x7fef_ffff_ffff_ffff, "1.7976931348623157e+308"),
        (0xffef_ffff_ffff_ffff, "-1.7976931348623157e+308"),
        (0x4340_0000_0000_0000, "9007199254740992"),
        (0xc340_0000_0000_0000, "-9007199254740992"),
        (0x4430_0000_0000_0000, "295147905179352830000"),
        (0x44b5_2d02_c7e1_4af5, "9.999999999999997e+22"),
        (0x44b5_2d02_c7e1_4af6, "1e+23"),
        (0x44b5_2d02_c7e1_4af7, "1.0000000000000001e+23"),
        (0x444b_1ae4_d6e2_ef4e, "999999999999999700000"),
        (0x444b_1ae4_d6e2_ef4f, "999999999999999900000"),
        (0x444b_1ae4_d6e2_ef50, "1e+21"),
        (0x3eb0_c6f7_a0b5_ed8c, "9.999999999999997e-7"),
        (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
        (0x41b3_de43_5555_5553, "333333333.3333332"),
        (0x41b3_de43_5555_5554, "333333333.33333325"),
        (0x41b3_de43_5555_5555, "333333333.3333333"),
        (0x41b3_de43_5555_5556, "333333333.3333334"),
        (0x41b3_de43_5555_5557, "333333333.33333343"),
        (0xbecb_f647_612f_3696, "-0.0000033333333333333333"),
        (0x4314_3ff3_c1cb_0959, "1424953923781206.2"),
    ];
    for (bits, expected) in vectors {
        assert_eq!(serde_json_canonicalizer::to_string(&f64::from_bits(bits)).unwrap(), expected);
    }
    for bits in [0x7fff_ffff_ffff_ffff, 0x7ff0_0000_0000_0000] {
        assert!(serde_json_canonicalizer::to_string(&f64::from_bits(bits)).is_err());
    }
}

const SAFE: u64 = (1 << 53) - 1;

/// Any header that can be written, with hostile texts in it.
fn header() -> impl Strategy<Value = Header> {
    let text = || prop_oneof![any::<String>(), "[\\x00-\\x20\"\\\\/\\x7f\u{2028}\u{fb33}\u{1f600}a]{0,12}"];
    (
        any::<([u128; 7], [u8; 32], [u8; 32], u32, bool)>(),
        (0..=SAFE, 0..=SAFE, 0..=SAFE, -(SAFE as i64)..=SAFE as i64),
        text(),
    )
        .prop_map(|((ids, a, b, version, shop), (device_seq, subject_seq, mono_ms, wall_ms), kind)| {
            let [boot, device, epoch, id, job, request, who] = ids.map(Uuid::from_u128);
            Header {
                body_hash: Hash(a),
                boot: BootId(boot),
                device: DeviceId(device),
                device_seq,
                epoch: EpochId(epoch),
                format: Format::CURRENT,
                id: EventId(id),
                kind,
                mono_ms,
                prev_device: Hash(b),
                prev_subject: Hash::of(&a),
                request: RequestId(request),
                request_hash: Hash::of(&b),
                subject: if shop { Subject::Shop(DeviceId(device)) } else { Subject::Job(JobId(job)) },
                subject_seq,
                version,
                wall_ms,
                who: PersonId(who),
            }
        })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    #[test]
    fn the_headers_bytes_are_those_of_a_general_rfc_8785_writer(header in header()) {
        let general = serde_json_canonicalizer::to_vec(&header).unwrap();
        prop_assert_eq!(header.canonical().unwrap(), general);
    }

    #[test]
    fn a_header_reads_back_from_its_canonical_bytes(header in header()) {
        let bytes = header.canonical().unwrap();
        prop_assert_eq!(serde_json::from_slice::<Header>(&bytes).unwrap(), header);
    }

    #[test]
    fn a_number_beyond_a_double_is_refused(header in header(), which in 0..4, over in 1..1000_u64) {
        let mut header = header;
        match which {
            0 => header.device_seq = SAFE + over,
            1 => header.subject_seq = SAFE + over,
            2 => header.mono_ms = SAFE + over,
            _ => header.wall_ms = -((SAFE + over) as i64),
        }
        let refused = matches!(header.canonical(), Err(JournalError::Number { .. }));
        prop_assert!(refused);
    }
}
