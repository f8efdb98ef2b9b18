//! Estimates and what the customer agreed to, from the first page to what is pasted elsewhere.

use panside_job::EntryValue;
use panside_job::entry::{AuthorizationResult, WorkedOut};
use panside_job::event::{Entered, Finished, Lost};
use panside_job::value::{Answer, Authorized, EstimateLines, LaborLine, MayTurnUpLine, Means, PartLine};
use panside_messages::Speaker;
use panside_procedure::format::Role;
use panside_record::Document;
use panside_trade::estimate::{Estimate, Line, MayTurnUp};
use panside_trade::money::{Currency, Money};

use crate::bay::{Bay, CHECKLIST, SHEET, Said, Tested};

type Made<T> = Result<T, Box<dyn std::error::Error>>;

/// Two go-aheads before the fixture's job: for the pan, and for more that turned up.
const ASKED: &str = r#"{ "id": "bill", "title": "Bill", "steps": [
    { "id": "ask", "title": "Ask the customer", "instruction": "Ask.", "zone": "bench", "entries": [
        { "id": "estimate", "label": "Estimate", "ask": { "estimate": {} } },
        { "id": "answer", "label": "Answer", "ask": { "authorization": { "for": "ask.estimate" } }, "classes": {
            "agreed": {}, "declined": { "ends": "stop" }, "pending": { "not_yet": true }, "below": { "not_yet": true } } },
        { "id": "asked", "label": "Asked", "ask": { "sign_off": { "sign": "agreed" } } }] },
    { "id": "parts", "title": "Parts here", "instruction": "Look.", "zone": "bench", "entries": [
        { "id": "part_number", "label": "Gasket number", "ask": { "scan": { "of": "text" } } }] },
    { "id": "ask_more", "title": "Ask for more", "instruction": "Ask.", "zone": "bench", "entries": [
        { "id": "answer", "label": "Answer", "ask": { "authorization": {} }, "classes": {
            "agreed": {}, "declined": { "ends": "stop" }, "pending": { "not_yet": true } } },
        { "id": "asked", "label": "Asked", "ask": { "sign_off": { "sign": "more_agreed" } } }] }] }"#;

fn part(name: &str, number: Option<&str>, quantity: &str, price: Option<&str>) -> PartLine {
    let number = number.map(str::to_owned);
    PartLine { name: name.into(), number, quantity: quantity.into(), price: price.map(str::to_owned) }
}

fn lines() -> EstimateLines {
    EstimateLines {
        currency: "USD".into(),
        parts: vec![
            part("pan gasket", Some("DEMO-16"), "1", Some("24,60")),
            part("joint nuts", None, "2", Some("3.25")),
            part("shop rags", None, "4", None),
        ],
        labor: vec![LaborLine {
            what: "pan off and on".into(),
            hours: "2.5".into(),
            rate: Some("96".into()),
        }],
        may_turn_up: vec![MayTurnUpLine { what: "snapped stud".into(), up_to: "85".into() }],
    }
}

/// The same as it is worked out when it is entered.
fn worked(lines: &EstimateLines) -> Made<Estimate> {
    let line = |what: &String, quantity: &String, price: &Option<String>| -> Made<Line> {
        Ok(Line::new(what, quantity.parse()?, price.as_deref().map(str::parse).transpose()?)?)
    };
    let parts = lines.parts.iter().map(|part| line(&part.name, &part.quantity, &part.price));
    let labor = lines.labor.iter().map(|labor| line(&labor.what, &labor.hours, &labor.rate));
    let may = lines
        .may_turn_up
        .iter()
        .map(|one| Ok(MayTurnUp { what: one.what.clone(), up_to: one.up_to.parse()? }));
    let may = may.collect::<Made<Vec<_>>>()?;
    Ok(Estimate::of(Currency::Usd, parts.collect::<Made<_>>()?, labor.collect::<Made<_>>()?, may)?)
}

fn answer(bay: &mut Bay, step: &str, amount: &str, given_at: Option<&str>) -> Made<()> {
    let value = Authorized {
        answer: Answer::Agreed,
        amount: amount.into(),
        currency: "USD".into(),
        given_by: "the owner".into(),
        means: Some(Means::Telephone),
        given_at: given_at.map(str::to_owned),
    };
    let judged = AuthorizationResult {
        class: "agreed".into(),
        amount: Some(amount.parse::<Money>()?),
        currency: Some(Currency::Usd),
        sum: None,
        limit: None,
    };
    enter(bay, step, "answer", (EntryValue::Authorization(value), "agreed"), Some(judged.into()));
    Ok(())
}

fn enter(bay: &mut Bay, step: &str, entry: &str, value: (EntryValue, &str), how: Option<WorkedOut>) {
    let (value, class) = (value.0, value.1.to_owned());
    bay.then(Entered { step: step.into(), entry: entry.into(), value, class, worked_out: how });
}

fn signed(bay: &mut Bay, step: &str, classes: &[(&str, &str)], sign: &str) {
    let mut done = crate::bay::done(step, classes, "Kim", &[("asked", sign)]);
    done.signs[0].role = Role::ServiceWriter;
    bay.then(done);
}

fn billed(lines: EstimateLines) -> Made<Document> {
    let signs = ["agreed", "more_agreed"].map(|id| {
        format!(
            r#"{{ "id": "{id}", "kind": "permit", "text": "{id}.", "by": "service_writer", "holds_while": "true" }},"#
        )
    });
    let checklist = String::from_utf8_lossy(CHECKLIST)
        .replace("\"sign_offs\": [", &format!("\"sign_offs\": [{}", signs.concat()))
        .replace("\"phases\": [", &["\"phases\": [", ASKED, ","].concat());
    let mut bay = Bay::with(checklist.as_bytes(), SHEET)?;
    bay.who = "Kim";
    bay.begin("ask");
    let how = worked(&lines)?;
    enter(&mut bay, "ask", "estimate", (EntryValue::Estimate(lines), "estimated"), Some(how.into()));
    answer(&mut bay, "ask", "300", Some("08:01"))?;
    signed(&mut bay, "ask", &[("estimate", "estimated"), ("answer", "agreed")], "agreed");
    bay.work("parts", &[("part_number", EntryValue::Scan { text: "demo-16".into() }, "read")], &[]);
    bay.begin("ask_more");
    answer(&mut bay, "ask_more", "45,50", None)?;
    signed(&mut bay, "ask_more", &[("answer", "agreed")], "more_agreed");
    bay.who = "Ada";
    bay.open_up();
    bay.close_up();
    bay.then(Finished { lost: Lost::default() });
    Ok(bay.document())
}

fn holds(text: &str, parts: &[&str]) {
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in parts {
        assert!(text.contains(part), "\"{part}\" is not in: {}", text.get(..6000).unwrap_or(&text));
    }
}

#[test]
fn the_first_page_can_be_billed_from() -> Tested {
    let text = billed(lines())?.text();
    holds(
        &text,
        &[
            "Ask the customer 300 USD before tax, the owner, by phone, at 08:01. Signed by Kim",
            "Ask for more 45,50 USD before tax, the owner, by phone. Signed by Kim",
            // 24.60 + 2 × 3.25 + 2.5 × 96.00, and 85.00 on top.
            "Estimate 271.10 USD before tax, at most 356.10 USD with what may turn up",
            "Agreed in all 345.50 USD before tax",
            "pan gasket (DEMO-16) 1 24.60 USD",
            "joint nuts 3 in, 2 estimated 6.50 USD",
            "shop rags 4 estimated",
            "Labor estimated 2.5 h, 240.00 USD",
        ],
    );
    let first = &text[..text.find("THE JOB").ok_or("no file")?];
    assert_eq!(first.matches("pan gasket").count(), 1, "no part is billed twice: {first}");
    assert!(!first.contains("Gasket number"), "a label that the estimate has already: {first}");
    Ok(())
}

#[test]
fn the_file_has_every_line_with_its_sums() -> Tested {
    holds(
        &billed(lines())?.text(),
        &[
            "ESTIMATE, BEFORE TAX",
            "pan gasket DEMO-16 1 24.60 24.60 USD",
            "pan off and on 2.5 h 96 240.00 USD",
            "may turn up: snapped stud 85.00 USD",
            "Parts and labor 271.10 USD",
            "One line has no price and is not in the sums.",
            "1 pan gasket (DEMO-16) at 24.60 USD",
            "snapped stud may turn up, at most 85 USD",
            "parts and labor: 31.10 + 240.00 = 271.10 USD",
        ],
    );
    Ok(())
}

#[test]
fn the_data_keeps_what_was_typed() -> Tested {
    let document = billed(lines())?;
    assert_eq!(document.money.estimates[0].parts[0].price.as_deref(), Some("24,60"));
    assert_eq!(document.money.agreed.len(), 2);
    let json = String::from_utf8(document.to_json()?)?;
    assert_eq!(serde_json::from_str::<Document>(&json)?, document);
    Ok(())
}

#[test]
fn the_customer_reads_the_same_amounts_in_plain_words() -> Tested {
    let text = billed(lines())?.to_customer_text(Speaker::english());
    holds(
        &text,
        &[
            "300 USD before tax, the owner",
            "Agreed in all 345.50 USD before tax",
            "snapped stud",
            "pan gasket (DEMO-16) 1",
        ],
    );
    Ok(())
}

#[test]
fn what_is_pasted_has_prices() -> Tested {
    let [parts, labor, _] = billed(lines())?.to_csv(Speaker::english());
    let lines: Vec<_> = parts.text.split("\r\n").collect();
    assert_eq!(
        lines,
        [
            "Part,Part number,Quantity,Unit,Price,Amount,Currency",
            "pan gasket,DEMO-16,1,,24.60,24.60,USD",
            "joint nuts,,3,,3.25,,USD",
            "shop rags,,4,,,,USD",
            ""
        ]
    );
    assert!(labor.text.contains("pan off and on,,,,,2.5 h,96,240.00,USD"), "{}", labor.text);
    Ok(())
}

#[test]
fn two_hundred_lines_leave_the_first_page_one_page() -> Tested {
    let many = (1..=200).map(|number| part(&format!("part {number}"), None, "1", Some("1.25")));
    let document = billed(EstimateLines { parts: many.collect(), ..lines() })?;
    holds(&document.text(), &["Parts and labor 490.00 USD", "part 200 1 1.25 1.25 USD"]);
    let inputs = panside_record::PdfInputs::default();
    let pages = crate::tools::File::new(&document.to_pdf(Speaker::english(), &inputs)?)?.pages()?;
    assert!(pages[0].contains("Agreed in all") && !pages[0].contains("part 200"), "{}", pages[0]);
    assert!(pages[1..].concat().contains("part 200"));
    Ok(())
}
