//! A value as one line of text: figures as they were typed, or as the language writes them.

use std::collections::BTreeSet;

use panside_job::entry::WorkedOut;
use panside_job::job::EnteredValue;
use panside_job::value::{
    Accounted, Adapter, Answer, Authorized, CoilShown, CoilValue, CoilsValue, EstimateLines, MeterError,
    Probed, ProbedBy, ProbedSurface, StickReading, StickShows, Tool,
};
use panside_job::{EntryValue, SignedPin};
use panside_messages::Message;
use panside_procedure::format::Ask;
use panside_trade::coil::{MeterShows, parse_shown};

use crate::messages;
use crate::signs::{pin_told, pin_words};
use crate::source::Source;

/// How figures are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Figures {
    /// With the decimal sign that was typed.
    Typed,
    /// With the decimal sign of the language.
    Shown,
}

/// The value in words. People are named as they were called then.
pub(crate) fn text(
    source: Source<'_>,
    ask: Option<&Ask>,
    entered: &EnteredValue,
    figures: Figures,
) -> String {
    let EnteredValue { mark, worked_out, .. } = entered;
    Line { source, figures, seq: mark.seq, worked_out: worked_out.as_ref() }.text(ask, &entered.value)
}

/// What the customer answered, with the decimal signs that were typed.
pub(crate) fn answer(source: Source<'_>, answered: &Authorized) -> String {
    Line { source, figures: Figures::Typed, seq: 0, worked_out: None }.answered(answered)
}

struct Line<'a> {
    source: Source<'a>,
    figures: Figures,
    seq: u64,
    worked_out: Option<&'a WorkedOut>,
}

impl Line<'_> {
    fn text(&self, ask: Option<&Ask>, value: &EntryValue) -> String {
        let say = self.source.say;
        match value {
            EntryValue::SignOff(signature) => {
                self.put(&messages::value_signed(self.called(signature.by), signature.role))
            }
            EntryValue::Reading { value, unit } => self.shown(value, unit),
            EntryValue::Level { readings, confirmed_no_trace, given_up } => {
                let read = readings.iter().map(|reading| self.stick(reading));
                let dry = confirmed_no_trace.then(|| self.put(&messages::value_still_dry()));
                let told = given_up.as_ref();
                let told = told.map(|told| self.put(&messages::value_not_reached(self.told(told))));
                say.apart(read.chain(dry).chain(told))
            }
            EntryValue::Count { of, accounted } => {
                let counted = of.iter().map(|(id, pieces)| {
                    let name = self.source.job.procedure.checklist.item_name(id);
                    self.put(&messages::value_pieces(name, pieces.to_string()))
                });
                let told = accounted.as_ref();
                let told = told.map(|told| self.put(&messages::value_missing_pieces(self.told(told))));
                say.apart([say.listed(counted)].into_iter().chain(told))
            }
            EntryValue::Torque { stages, unit, tool, adapter, angles, exception } => {
                let stages = say.apart_by_then(stages.iter().map(|stage| self.number(stage)));
                let mut said = vec![self.clicked(&stages, unit, tool)];
                said.extend(adapter.as_ref().map(|adapter| self.adapter(adapter)));
                let turned = || say.listed(angles.iter().map(|angle| self.number(angle)));
                said.extend((!angles.is_empty()).then(|| self.put(&messages::value_turned(turned()))));
                let told = exception.as_ref();
                said.extend(told.map(|told| self.put(&messages::value_excepted(self.told(told)))));
                say.apart(said)
            }
            EntryValue::Coil(coil) => self.coil(coil),
            EntryValue::Coils(coils) => self.coils(coils),
            EntryValue::CoolDown(probed) => self.probed(probed),
            EntryValue::Balance { temperature, temperature_unit, explained } => {
                let fresh = self.measure(temperature, temperature_unit);
                let fresh = (!temperature.is_empty()).then(|| self.put(&messages::value_new_fluid(fresh)));
                let told = explained.as_ref();
                let told = told.map(|told| self.put(&messages::value_difference(self.told(told))));
                say.apart(fresh.into_iter().chain(told))
            }
            EntryValue::Photo { hash, width, height } => {
                self.put(&messages::value_photo(short(hash), width.to_string(), height.to_string()))
            }
            EntryValue::Choice { class } => match ask {
                Some(Ask::Choice(asked)) => asked.label(class).to_owned(),
                _ => class.clone(),
            },
            EntryValue::Several { found } => self.found(ask, found),
            EntryValue::Decision { class, against, pin } => self.decided(ask, class, against.as_ref(), *pin),
            EntryValue::Scan { text } if text.is_empty() => self.put(&messages::value_none()),
            EntryValue::Scan { text } | EntryValue::Note { text } => text.clone(),
            EntryValue::Timer {} => self.put(&messages::value_waited()),
            EntryValue::Estimate(lines) => self.estimate(lines),
            EntryValue::Authorization(answered) => self.answered(answered),
        }
    }

    fn put(&self, message: &Message) -> String {
        self.source.say.within(message)
    }

    fn number(&self, typed: &str) -> String {
        match self.figures {
            Figures::Typed => typed.to_owned(),
            Figures::Shown => self.source.say.number(typed),
        }
    }

    fn measure(&self, typed: &str, unit: &str) -> String {
        self.source.say.as_typed(&self.number(typed), unit)
    }

    fn called(&self, person: panside_journal::PersonId) -> String {
        self.source.job.people.called(person, self.seq)
    }

    fn told(&self, told: &Accounted) -> String {
        self.put(&messages::reason_says(&told.reason, self.called(told.by)))
    }

    fn clicked(&self, stages: &str, unit: &str, tool: &Tool) -> String {
        let clicked = self.source.say.as_typed(stages, unit);
        self.put(&messages::value_clicked(clicked, &tool.name))
    }

    fn adapter(&self, adapter: &Adapter) -> String {
        let Adapter { tool, length, unit, angle } = adapter;
        let [length, tool] = [length, tool].map(|typed| self.measure(typed, unit));
        self.put(&messages::value_adapter(length, self.number(angle), tool))
    }

    fn coil(&self, coil: &CoilValue) -> String {
        let CoilValue { shows, unit, leads, temperature, temperature_unit, meter } = coil;
        let at = self.measure(temperature, temperature_unit);
        let read = self.put(&messages::value_at(self.shown(shows, unit), at));
        self.metered(vec![read], leads.as_ref(), meter.as_ref(), unit)
    }

    fn coils(&self, coils: &CoilsValue) -> String {
        let CoilsValue { readings, unit, leads, temperature, temperature_unit, meter } = coils;
        let at = self.measure(temperature, temperature_unit);
        let read = |one: &CoilShown| {
            self.put(&messages::value_at(
                self.put(&messages::value_coil(&one.coil, self.shown(&one.shows, unit))),
                &at,
            ))
        };
        self.metered(readings.iter().map(read).collect(), leads.as_ref(), meter.as_ref(), unit)
    }

    /// What a meter shows: overload has no unit.
    fn shown(&self, shows: &str, unit: &str) -> String {
        match parse_shown(shows) {
            Ok(MeterShows::Overload) => shows.to_owned(),
            _ => self.measure(shows, unit),
        }
    }

    /// What was read, with what is known of leads and meter.
    fn metered(
        &self,
        mut said: Vec<String>,
        leads: Option<&String>,
        meter: Option<&MeterError>,
        unit: &str,
    ) -> String {
        said.extend(leads.map(|leads| self.put(&messages::value_leads(self.measure(leads, unit)))));
        said.extend(meter.map(|off| {
            let digits = self.measure(&off.digits, unit);
            self.put(&messages::value_meter(self.number(&off.percent), digits))
        }));
        self.source.say.listed(said)
    }

    fn probed(&self, probed: &Probed) -> String {
        let Probed { value, unit, by, ambient } = probed;
        let value = self.measure(value, unit);
        let probed = match by {
            ProbedBy::Contact => messages::value_contact(value),
            ProbedBy::Infrared { set_to, surface } => {
                messages::value_infrared(value, self.number(set_to), surface_word(*surface))
            }
        };
        let around = ambient.as_ref();
        let around = around.map(|ambient| self.put(&messages::value_ambient(self.measure(ambient, unit))));
        self.source.say.apart([self.put(&probed)].into_iter().chain(around))
    }

    /// What the buttons of what was found say, in the order of the list; ids where the checklist has none.
    fn found(&self, ask: Option<&Ask>, found: &BTreeSet<String>) -> String {
        if found.is_empty() {
            return self.put(&messages::value_none_of_list());
        }
        let Some(Ask::Several(asked)) = ask else {
            return self.source.say.listed(found.iter().cloned());
        };
        let labels = asked.options.iter().filter(|option| found.contains(&option.id));
        self.source.say.listed(labels.map(|option| option.label.clone()))
    }

    /// What was decided, with the sentence of the table's row; who went against it is not to be read over.
    fn decided(
        &self,
        ask: Option<&Ask>,
        class: &str,
        against: Option<&Accounted>,
        pin: Option<SignedPin>,
    ) -> String {
        let (Some(Ask::Decision(asked)), Some(WorkedOut::Decision(result))) = (ask, self.worked_out) else {
            let told = against.map(|told| self.told(told));
            return self.source.say.apart([class.to_owned()].into_iter().chain(told));
        };
        let (decided, says) = (asked.label(class), result.says(asked).unwrap_or_default());
        let Some(told) = against else { return self.put(&messages::value_decided(decided, says)) };
        let pin = pin.map(|pin| self.put(&pin_words(&pin_told(self.source, pin, self.seq))));
        let told = self.source.say.listed([self.told(told)].into_iter().chain(pin));
        self.put(&messages::value_against(decided, asked.label(&result.table), says, told))
    }

    /// Every line of an estimate.
    fn estimate(&self, lines: &EstimateLines) -> String {
        let priced = |price: &Option<String>| match price {
            Some(price) => self.measure(price, &lines.currency),
            None => self.put(&messages::value_no_price()),
        };
        let parts = lines.parts.iter().map(|part| {
            let name =
                part.number.as_ref().map(|number| self.put(&messages::part_numbered(&part.name, number)));
            let name = name.unwrap_or_else(|| part.name.clone());
            self.put(&messages::value_priced(self.number(&part.quantity), name, priced(&part.price)))
        });
        let labor = lines.labor.iter().map(|labor| {
            let hours = self.put(&messages::hours_labor(self.number(&labor.hours)));
            self.put(&messages::value_priced(hours, &labor.what, priced(&labor.rate)))
        });
        let may = lines.may_turn_up.iter().map(|one| {
            self.put(&messages::value_may_turn_up(&one.what, self.measure(&one.up_to, &lines.currency)))
        });
        self.source.say.apart(parts.chain(labor).chain(may))
    }

    /// What the customer answered.
    fn answered(&self, answered: &Authorized) -> String {
        let amount =
            (!answered.amount.is_empty()).then(|| self.measure(&answered.amount, &answered.currency));
        let answer = match (answered.answer, amount) {
            (Answer::Agreed, amount) => messages::value_agreed(amount.unwrap_or_default()),
            (Answer::Declined, None) => messages::value_declined(),
            (Answer::Declined, Some(amount)) => messages::value_declined_amount(amount),
            (Answer::Pending, _) => messages::value_pending(),
        };
        let by = (!answered.given_by.is_empty()).then(|| answered.given_by.clone());
        let means = answered.means.map(|means| self.put(&messages::value_means(means.word())));
        let at = answered.given_at.as_ref().map(|at| self.put(&messages::value_given_at(at)));
        self.source.say.listed([self.put(&answer)].into_iter().chain(by).chain(means).chain(at))
    }

    fn stick(&self, reading: &StickReading) -> String {
        let at = self.measure(&reading.temperature, &reading.temperature_unit);
        let shows = match &reading.stick {
            StickShows::Trace { value, unit } => self.measure(value, unit),
            StickShows::NoTrace => self.put(&messages::no_trace()),
        };
        self.put(&messages::value_at(shows, at))
    }
}

fn surface_word(surface: ProbedSurface) -> &'static str {
    match surface {
        ProbedSurface::Coated => "coated",
        ProbedSurface::Oxidised => "oxidized",
        ProbedSurface::Rusty => "rusty",
        ProbedSurface::Bright => "bright",
    }
}

/// The first digits of a hash, enough to find it again among a job's photos.
pub(crate) fn short(hash: &str) -> &str {
    hash.get(..12).unwrap_or(hash)
}
