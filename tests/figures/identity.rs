//! Vehicle identification numbers.

use panside_tests::python::ask;
use panside_trade::vin::{VinProblem, read_vin};

use crate::Seen;
use crate::chance::Chance;

const CHARACTERS: &[u8] = b"0123456789ABCDEFGHJKLMNPRSTUVWXYZ";

#[test]
fn check_digits_and_model_years_agree_with_vininfo() {
    let mut chance = Chance(5);
    let mut numbers: Vec<String> = (0..2000)
        .map(|_| (0..17).map(|_| char::from(CHARACTERS[chance.one_of(CHARACTERS.len())])).collect())
        .collect();
    // By chance one in eleven fits; a further thousand is made to fit, so that both answers are asked for often.
    let mended: Vec<String> = numbers
        .iter()
        .take(1000)
        .map(|number| {
            let wrong = read_vin(number).problems.into_iter().find_map(|problem| match problem {
                VinProblem::CheckDigit { expected, .. } => Some(expected),
                _ => None,
            });
            let digit = wrong.unwrap_or_else(|| char::from(number.as_bytes()[8]));
            format!("{}{digit}{}", &number[..8], &number[9..])
        })
        .collect();
    numbers.extend(mended);
    let answers: Vec<(Option<bool>, Option<Vec<u16>>)> = ask("figures_vin.py", &numbers).unwrap();

    let mut digits = Seen::of("VIN: fits or not", "vininfo 1.11.0");
    let mut years = Seen::of("VIN: model year is one of its years", "vininfo 1.11.0");
    let (mut fits, mut left_out, mut later) = (0, 0, 0);
    for (number, (expected, theirs)) in numbers.iter().zip(&answers) {
        let vin = read_vin(number);
        match expected {
            Some(expected) => digits.differ(if vin.fits() == *expected { 0.0 } else { 1.0 }),
            None => left_out += 1,
        }
        fits += usize::from(vin.fits());
        // vininfo drops years that are yet to come, so theirs are asked for among ours.
        match theirs.as_deref() {
            None => {}
            Some([]) => later += usize::from(!vin.years_any_weight.is_empty()),
            Some(theirs) => {
                let all_ours = theirs.iter().all(|year| vin.years_any_weight.contains(year));
                years.differ(if all_ours { 0.0 } else { 1.0 });
            }
        }
    }
    digits.tell(0.0);
    years.tell(0.0);
    assert!((900..1500).contains(&fits), "{fits} fit");
    println!(
        "  of {} numbers {fits} fit; {left_out} are of makers that vininfo knows to go another way",
        numbers.len()
    );
    println!("  for {later} vininfo gives no year and we do");
}
