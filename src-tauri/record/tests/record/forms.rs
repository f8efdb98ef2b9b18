//! The two forms of a record: marked, equal from run to run, within their columns, with their proof.

use panside_journal::Hash;
use panside_messages::Speaker;
use panside_procedure::{Procedure, proof};
use panside_record::{Document, ProofSummary, ProofVerdict, RecordInputs};

use crate::bay::{Bay, CHECKLIST, DEMO_MARK, SHEET, Said, Tested, note};

#[test]
fn no_number_in_the_document_is_a_float() -> Tested {
    fn floats(value: &serde_json::Value) -> usize {
        match value {
            serde_json::Value::Number(number) => usize::from(number.is_f64()),
            serde_json::Value::Array(all) => all.iter().map(floats).sum(),
            serde_json::Value::Object(all) => all.values().map(floats).sum(),
            _ => 0,
        }
    }
    let mut bay = Bay::open()?;
    bay.open_up();
    bay.close_up();
    let json: serde_json::Value = serde_json::from_slice(&bay.document().to_json()?)?;
    assert_eq!(floats(&json), 0);
    Ok(())
}

#[test]
fn equal_jobs_give_equal_bytes_and_the_bytes_read_back() -> Tested {
    let bytes = || -> Result<Vec<u8>, Box<dyn std::error::Error>> {
        let mut bay = Bay::open()?;
        bay.open_up();
        bay.close_up();
        Ok(bay.document().to_json()?)
    };
    let once = bytes()?;
    assert_eq!(once, bytes()?);
    let document: Document = serde_json::from_slice(&once)?;
    assert_eq!(document.to_json()?, once);
    Ok(())
}

#[test]
fn invented_content_is_marked_in_both_forms_and_real_content_is_not() -> Tested {
    let document = Bay::open()?.document();
    assert_eq!(document.demo.as_deref(), Some(DEMO_MARK));
    assert!(document.text().lines().next().is_some_and(|line| line.ends_with(DEMO_MARK)));
    assert!(String::from_utf8(document.to_json()?)?.contains(DEMO_MARK));

    let real = |bytes: &[u8]| {
        String::from_utf8_lossy(bytes).replacen("\"demo\": true", "\"demo\": false", 1).into_bytes()
    };
    let only_sheet = Bay::with(&real(CHECKLIST), SHEET)?.document();
    assert_eq!(only_sheet.demo.as_deref(), Some(DEMO_MARK), "a demo sheet marks the record too");
    let neither = Bay::with(&real(CHECKLIST), &real(SHEET))?.document();
    assert!(neither.demo.is_none() && !neither.text().contains(DEMO_MARK));
    Ok(())
}

#[test]
fn a_kept_proof_is_told_and_one_of_another_checklist_is_told_to_be_that() -> Tested {
    let procedure = Procedure::load(CHECKLIST)?;
    let ask = proof::Ask { void: false, observe: false, ..proof::Ask::default() };
    let proof = proof::prove(&procedure, ask, &mut proof::go_on);
    let kept = ProofSummary::read(&serde_json::to_string(&proof)?, Hash::of(CHECKLIST))?;
    assert_eq!((kept.states, kept.engine.as_str()), (proof.searches[0].states.found as u64, proof::ENGINE));
    assert_eq!(kept.verdict == ProofVerdict::Proved, proof.verdict == proof::Verdict::Proved);

    let bay = Bay::open()?;
    let with = |proof| Document::of(&bay.job, &RecordInputs { proof, ..bay.inputs() }, Speaker::english());
    assert!(with(Some(kept.clone())).proof.of_this_checklist);
    let other = with(Some(ProofSummary { checklist: Hash::of(b"another"), ..kept }));
    assert!(other.text().contains("That is not the checklist of this job"));
    assert!(with(None).text().contains("No proof came with this record."));
    assert!(ProofSummary::read("{}", Hash::NONE).is_err());
    Ok(())
}

#[test]
fn the_text_fits_its_columns_and_cannot_steer_a_terminal() -> Tested {
    let mut bay = Bay::open()?;
    bay.open_up();
    let nasty = format!("{}\u{1b}[2J {}\n{}", "word ".repeat(60), "x".repeat(250), "end");
    bay.work("find", &[("cause", note(&nasty), "written")], &[]);
    let text = bay.document().text();
    for line in text.lines() {
        assert!(line.chars().count() <= 100, "{line}");
    }
    assert!(!text.contains('\u{1b}'));
    assert!(
        text.contains("The vehicle maker's service information, the lift maker's"),
        "what comes first stands on the first page"
    );
    Ok(())
}
