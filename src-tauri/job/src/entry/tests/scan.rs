use super::{arg, at, ids, typing};
use crate::value::EntryValue;
use crate::view::Preview;

fn read(entry: &str, text: &str) -> Preview {
    typing(&at("identify"), "identify", entry, &EntryValue::Scan { text: text.into() })
}

#[test]
fn a_vin_tells_while_it_is_typed_whether_its_check_digit_fits() {
    // The worked example of the check digit in the encyclopedia article on vehicle identification numbers.
    assert_eq!(ids(&read("vin", "1M8GDM9AXKP042788").said), ["scan-read", "vin-fits"]);
    let misread = read("vin", "1M8GDM9AXKP042783");
    assert_eq!(misread.class.as_deref(), Some("read"), "outside North America it need not fit");
    assert!(ids(&misread.said).contains(&"vin-check-digit"));
    let perhaps = misread.said.iter().filter(|message| message.id == "working-vin-perhaps");
    assert!(perhaps.count() > 0, "{:?}", misread.said);
}

#[test]
fn a_letter_that_no_vin_has_is_refused_with_what_may_be_meant() {
    let told = read("vin", "1M8GDM9AXKPO42788");
    assert_eq!((told.class, told.said[0].id.as_str()), (None, "vin-character"));
    assert_eq!(arg(&told.said, "working-vin-perhaps", "vin"), "1M8GDM9AXKP042788");
}

#[test]
fn a_code_of_another_system_is_noted_and_set_apart() {
    let said = read("codes", "p0765 P0455 C0035 U0100 P1747").said;
    assert_eq!(ids(&said), ["scan-read", "code-told", "code-apart", "code-apart", "code-told", "code-told"]);
    assert_eq!(arg(&said[1..2], "code-told", "part"), "transmission");
    assert_eq!(arg(&said[2..3], "code-apart", "part"), "emissions");
    assert_eq!(arg(&said[5..], "code-told", "origin"), "maker");
}

#[test]
fn codes_are_kept_once_each_and_what_is_none_is_told() {
    let mut bay = at("identify");
    bay.enter("identify", "codes", EntryValue::Scan { text: "p0765;P0765".into() }).unwrap();
    assert_eq!(bay.step("identify").entries[1].value, Some(EntryValue::Scan { text: "P0765".into() }));
    assert_eq!(read("codes", "P0765 4711").said[0].id, "trade-code-form");
    assert_eq!(ids(&read("codes", "").said), ["scan-no-codes"]);
}
