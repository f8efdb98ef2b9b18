//! What turned up outside of the checklist, from the first page to what is pasted elsewhere.

use panside_job::EntryValue;
use panside_job::entry::{AuthorizationResult, WorkedOut};
use panside_job::event::{
    Answered, Asked, DealtWith, Finished, Found, Lost, PieceBack, PieceGone, PieceOff, TakenBack, WentOn,
};
use panside_job::value::{Accounted, Answer, Authorized, EstimateLines, LaborLine, Means, PartLine, Urgency};
use panside_messages::Speaker;
use panside_record::Document;
use panside_trade::estimate::{Estimate, Line};
use panside_trade::money::Currency;

use crate::bay::{Bay, PHOTO, Said, Tested, person};

type Made<T> = Result<T, Box<dyn std::error::Error>>;

fn found(text: &str, urgency: Urgency, photos: Vec<EntryValue>) -> Found {
    Found { text: text.into(), at: Some("left".into()), urgency, photos }
}

/// Two nuts at 4.30 and half an hour at 110.00: 63.60.
fn asked(text: &str) -> Made<Asked> {
    let lines = EstimateLines {
        currency: "USD".into(),
        parts: vec![PartLine {
            name: "bracket nut".into(),
            number: None,
            quantity: "2".into(),
            price: Some("4,30".into()),
        }],
        labor: vec![LaborLine { what: "split".into(), hours: "0.5".into(), rate: Some("110".into()) }],
        may_turn_up: Vec::new(),
    };
    let part = Line::new("bracket nut", "2".parse()?, Some("4.30".parse()?))?;
    let labor = Line::new("split", "0.5".parse()?, Some("110".parse()?))?;
    let worked = Estimate::of(Currency::Usd, vec![part], vec![labor], Vec::new())?;
    Ok(Asked {
        step: "seal".into(),
        text: text.into(),
        found: None,
        lines,
        worked_out: WorkedOut::Estimate(worked.into()),
    })
}

fn answered(asked: u64, answer: Answer) -> Made<Answered> {
    let (class, amount) = if answer == Answer::Agreed { ("agreed", "63.60") } else { ("declined", "") };
    let judged = AuthorizationResult {
        class: class.into(),
        amount: amount.parse().ok(),
        currency: (answer == Answer::Agreed).then_some(Currency::Usd),
        sum: Some("63.60".parse()?),
        limit: Some("63.60".parse()?),
    };
    let answer = Authorized {
        answer,
        amount: amount.into(),
        currency: "USD".into(),
        given_by: "owner".into(),
        means: Some(Means::Telephone),
        given_at: None,
    };
    Ok(Answered { asked, answer, worked_out: WorkedOut::Authorization(judged.into()) })
}

fn piece(name: &str, count: u8) -> PieceOff {
    PieceOff { name: name.into(), count, at: None, photos: Vec::new() }
}

fn job() -> Made<Bay> {
    let mut bay = Bay::open()?;
    let photo = EntryValue::Photo { hash: PHOTO.into(), width: 640, height: 480 };
    bay.then(found("brake hose cracked", Urgency::Soon, vec![photo]));
    bay.then(found("wiper torn", Urgency::Tell, Vec::new()));
    bay.then(found("entered for the van", Urgency::Soon, Vec::new()));
    bay.then(TakenBack { of: bay.job.last_seq(), reason: "another vehicle".into() });
    bay.then(found("nuts rusted", Urgency::Now, Vec::new()));
    bay.then(piece("bracket", 3));
    Ok(bay)
}

fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn holds(document: &Document, parts: &[&str]) {
    let text = flat(&document.text());
    for part in parts {
        assert!(text.contains(part), "\"{part}\" is not in: {text}");
    }
}

#[test]
fn what_is_found_stands_on_the_first_page_with_its_photo() -> Tested {
    let document = job()?.document();
    let text = flat(&document.text());
    let first = text.split("THE JOB").next().unwrap_or_default();
    assert!(first.contains("Recommended: brake hose cracked (left) (photo ba7816bf8f01)"), "{first}");
    assert!(first.contains("For the customer: wiper torn (left)"), "{first}");
    assert!(first.contains("Found, to be dealt with in this job: nuts rusted"), "{first}");
    assert!(first.contains("Off the vehicle: bracket 3"), "{first}");
    assert!(!first.contains("the van"), "taken back");
    holds(&document, &["found: entered for the van (left), recommended; taken back", "another vehicle"]);
    assert_eq!(document.photos.last().map(|photo| photo.label.as_str()), Some("brake hose cracked"));
    let customer = flat(&document.to_customer_text(Speaker::english()));
    assert!(customer.contains("Recommended: brake hose cracked (left)"), "{customer}");
    assert!(customer.contains("For the customer: wiper torn"), "{customer}");
    assert!(!customer.contains("ba7816bf"), "photo numbers are for the shop");
    Ok(())
}

#[test]
fn a_supplement_that_is_agreed_to_is_billed_and_one_that_is_not_is_told() -> Tested {
    let mut bay = job()?;
    bay.then(asked("bracket nuts")?);
    let open = bay.document();
    holds(
        &open,
        &["Supplement: bracket nuts asked, no answer yet", "Customer asked, not settled: bracket nuts"],
    );
    assert!(open.money.agreed_in_all.is_empty());
    bay.then(answered(bay.job.last_seq(), Answer::Agreed)?);
    bay.then(asked("new bracket")?);
    let second = bay.job.last_seq();
    bay.then(answered(second, Answer::Declined)?);
    bay.then(WentOn { asked: second, reason: "the old one holds".into() });
    let document = bay.document();
    holds(&document, &["63.60 USD before tax, owner, by phone", "went on without it: the old one holds"]);
    assert_eq!(document.money.agreed_in_all[0].value, "63.60");
    let [parts, labor, _] = document.to_csv(Speaker::english());
    assert!(parts.text.contains("bracket nut,,2"), "{}", parts.text);
    assert_eq!(parts.text.matches("bracket nut").count(), 1, "what was declined is not billed");
    assert!(labor.text.contains("split"), "{}", labor.text);
    let customer = flat(&document.to_customer_text(Speaker::english()));
    assert!(customer.contains("Not done, as you did not agree to it: new bracket"), "{customer}");
    Ok(())
}

#[test]
fn pieces_and_findings_say_what_became_of_them() -> Tested {
    let mut bay = job()?;
    let piece = bay.job.last_seq();
    bay.then(PieceBack { piece, count: 2, torque: Some("20 N·m".into()) });
    let accounted = Accounted { reason: "broken, a new one is in".into(), by: person("Ada") };
    bay.then(PieceGone { piece, count: 1, accounted });
    bay.then(DealtWith { found: piece - 1, text: "new nuts".into() });
    bay.open_up();
    bay.close_up();
    bay.then(Finished { lost: Lost::default() });
    let document = bay.document();
    holds(
        &document,
        &[
            "2 on again, tightened to 20 N·m",
            "1 not coming back: broken, a new one is in, says Ada",
            "dealt with",
        ],
    );
    assert!(document.missing.iter().all(|missing| missing.what != "bracket 3"), "{:?}", document.missing);
    let again: Document = serde_json::from_slice(&document.to_json()?)?;
    assert_eq!(again, document);
    Ok(())
}
