//! What was measured, as a window draws it.

use panside_bay::enter::{Command, EntryValue};

use crate::support::{Shop, begin, made};

const CHECKLIST: &[u8] = include_bytes!("../../../job/tests/fixtures/figures.checklist.json");
const SHEET: &[u8] = include_bytes!("../../../job/tests/fixtures/figures.sheet.json");

fn enter(step: &str, entry: &str, value: serde_json::Value) -> Command {
    let value: EntryValue = serde_json::from_value(value).unwrap();
    Command::Enter { step: step.into(), entry: entry.into(), value }
}

#[test]
fn a_page_of_figures_says_every_sentence_and_is_in_the_record() {
    let mut shop = Shop::new();
    let job = shop.try_start(CHECKLIST, SHEET).unwrap();
    assert_eq!(shop.bay.figures_page(job).unwrap().figures, [], "nothing was measured");
    for command in [made("start_engine"), made("stop_engine"), begin("probe")] {
        shop.enter(job, &command);
    }
    for shown in ["163", "131", "107", "88"] {
        shop.clock.advance_ms(6 * 60_000);
        let probed = serde_json::json!({"cool_down": {"value": shown, "unit": "°C", "by": "contact", "ambient": "22"}});
        shop.enter(job, &enter("probe", "joint", probed));
    }
    let page = shop.bay.figures_page(job).unwrap();
    let says: Vec<&str> = page.figures[0].says.iter().map(|says| says.text.as_str()).collect();
    assert!(says[0].starts_with("Probed: 08:06 163 °C"), "{says:?}");
    assert!(
        says.iter().any(|says| says.starts_with("It cools. It is not below the limit before 08:")),
        "{says:?}"
    );
    let json = serde_json::to_string(&page).unwrap();
    assert!(!json.contains("\"text\":\"\""), "{json}");
    let mut figures = page.figures;
    for figure in &mut figures {
        figure.each_message(&mut |message| assert!(!message.text.is_empty(), "{}", message.id));
    }
    assert_eq!(shop.bay.record(job).unwrap().figures, figures, "the record has the same");
}
