//! The proof: what it proves, what it finds, and what it does not claim.

mod changes;
mod dangers;
mod ends;
mod findings;
mod limits;
mod many;
mod observed;
mod piece;
mod sense;
mod used;

use panside_procedure::proof::{Answer, Ask, Finding, Proof, Property, Verdict, go_on, prove};

use crate::said::{Data, said};
use crate::support::Draft;

/// Neither voids nor observations.
const PLAIN: Ask = Ask { void: false, observe: false, ..Ask::ALL };

fn proof(draft: &Draft, ask: Ask) -> Proof {
    let proof = prove(&draft.procedure(), ask, &mut go_on);
    is_translated(draft, &proof);
    proof
}

/// Everything that a proof says is said in another language.
fn is_translated(draft: &Draft, proof: &Proof) {
    let text = draft.text();
    let files = [text.as_str()];
    let data = Data::of(&files);
    let found =
        proof.findings.iter().flat_map(|found| found.run.iter().chain([&found.what]).chain(&found.fix));
    let remarks = proof.remarks.iter().map(|remark| &remark.what);
    let limits = proof.assumed.iter().chain(&proof.not_claimed);
    found.chain(remarks).chain(limits).for_each(|message| data.is_all_that_stays(message));
}

fn is_proved(draft: &Draft) {
    let proof = proof(draft, Ask::default());
    assert_eq!((proof.verdict, proof.findings), (Verdict::Proved, Vec::new()));
    assert!(proof.properties.iter().all(|(_, answer)| *answer == Answer::Holds));
}

/// One property fails and the others hold; by one finding, which is given back.
///
/// Only properties that need observations are searched with them: what fails without them mostly fails with them too.
fn fails_only(draft: &Draft, property: Property) -> Finding {
    let needs_observing =
        |property: Property| matches!(property, Property::HonestWhenWrong | Property::AllUsed);
    let observe = needs_observing(property);
    let proof = proof(draft, Ask { observe, ..Ask::default() });
    assert_eq!(proof.verdict, Verdict::Refuted);
    for (one, answer) in &proof.properties {
        let expected = match *one {
            one if one == property => Answer::Fails,
            one if needs_observing(one) && !observe => Answer::NotDecided,
            _ => Answer::Holds,
        };
        assert_eq!(*answer, expected, "{one:?}: {:#?}", proof.findings);
    }
    assert_eq!(proof.findings.len(), 1, "{:#?}", proof.findings);
    proof.findings[0].clone()
}

/// The actions of a run without the titles of steps and vehicle actions.
fn run(finding: &Finding) -> Vec<String> {
    finding.run.iter().map(|action| said(action).split(" \"").next().unwrap_or_default().to_owned()).collect()
}
