//! Checklists, parts and sheets, changed by chance: they are refused with sentences, or taken and then worked with.

use panside_job::sheet::Specs;
use panside_procedure::{Procedure, load, parts};

use crate::chance::Chance;
use crate::corpus::{Corpus, File};
use crate::{Came, Input, mutate};

/// Actions that are tried on a checklist that was taken.
const ACTIONS: usize = 60;

fn changed(chance: &mut Chance, files: &[File], corpus: &Corpus) -> (String, Vec<u8>) {
    let file = chance.pick(files);
    let bytes = if chance.once_in(4) {
        mutate::text(chance, &file.text, corpus)
    } else {
        let other = &chance.pick(files).value;
        format!("{:#}", mutate::value(chance, &file.value, other, corpus)).into_bytes()
    };
    (file.name.clone(), bytes)
}

pub fn checklist(chance: &mut Chance, corpus: &Corpus) -> Input {
    Input { files: vec![changed(chance, &corpus.whole, corpus)], seed: chance.next() }
}

pub fn sheet(chance: &mut Chance, corpus: &Corpus) -> Input {
    Input { files: vec![changed(chance, &corpus.sheets, corpus)], seed: chance.next() }
}

/// A checklist that uses parts, with one or all of the files changed.
pub fn with_parts(chance: &mut Chance, corpus: &Corpus) -> Input {
    let whole = |file: &File| (file.name.clone(), file.text.clone().into_bytes());
    let mut files = vec![if chance.once_in(2) {
        whole(chance.pick(&corpus.using))
    } else {
        changed(chance, &corpus.using, corpus)
    }];
    let one = chance.below(corpus.parts.len());
    let all = chance.once_in(6);
    for (at, part) in corpus.parts.iter().enumerate() {
        let (name, bytes) =
            if at == one || all { changed(chance, std::slice::from_ref(part), corpus) } else { whole(part) };
        files.push((format!("{}/{name}", parts::FOLDER), bytes));
    }
    Input { files, seed: chance.next() }
}

pub fn load(input: &Input, _: &Corpus) -> Result<Came, String> {
    match Procedure::load(&input.files[0].1) {
        Err(problems) if problems.0.is_empty() => Err("it is refused without a reason".to_owned()),
        Err(problems) => {
            drop(problems.to_string());
            Ok(Came::Refused)
        }
        Ok(procedure) => {
            work(&procedure, &mut Chance::of(input.seed, 0));
            Ok(Came::Taken)
        }
    }
}

/// Tries actions by chance, and says what it does.
fn work(procedure: &Procedure, chance: &mut Chance) {
    let machine = &procedure.machine;
    let actions = procedure.all_actions();
    let starts = machine.all_starts();
    let Some(mut state) = (!starts.is_empty()).then(|| *chance.pick(&starts)) else { return };
    for _ in 0..ACTIONS {
        let action = *chance.pick(&actions);
        drop(procedure.say(action));
        match machine.step(&state, action) {
            Ok(next) => state = next,
            Err(_) => drop(machine.explain(&state, action)),
        }
        let shown: Vec<_> = procedure.steps().map(|(step, _)| machine.shown(&state, step)).collect();
        assert_eq!(shown.len(), machine.steps.len());
        assert!(machine.dangers_now(&state).iter().all(|danger| danger.at() < machine.dangers.len()));
    }
}

pub fn join(input: &Input, corpus: &Corpus) -> Result<Came, String> {
    let part = |name: &str| {
        let file = parts::file_of(name);
        input.files.iter().find(|(found, _)| *found == file).map(|(_, bytes)| bytes.clone())
    };
    let Ok(joined) = parts::join(&input.files[0].1, &part) else { return Ok(Came::Refused) };
    if joined.text.len() > 2 * load::LARGEST_FILE {
        return Err(format!("{} bytes are joined", joined.text.len()));
    }
    // The joined text is a checklist like any other: it loads as it does by itself, and has nothing left to join.
    let again = parts::join(joined.text.as_bytes(), &|_| None);
    if again.as_ref().map(|again| &again.text) != Ok(&joined.text) {
        return Err(format!("joining the joined text changes it: {again:?}"));
    }
    let whole = Input { files: vec![(String::new(), joined.text.clone().into_bytes())], seed: input.seed };
    let came = self::load(&whole, corpus)?;
    if joined.load().is_ok() != (came == Came::Taken) {
        return Err(
            "the joined text loads by itself, but not with its places, or the other way round".to_owned()
        );
    }
    Ok(came)
}

pub fn load_sheet(input: &Input, _: &Corpus) -> Result<Came, String> {
    let Ok(sheet) = load::sheet(&input.files[0].1) else { return Ok(Came::Refused) };
    Ok(if Specs::of(&sheet).is_ok() { Came::Taken } else { Came::Refused })
}
