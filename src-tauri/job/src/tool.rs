//! A torque tool of the shop while it is typed, and what is to be said of it today.

use chrono::NaiveDate;
use panside_trade::measure::{Measure, Torque};
use panside_trade::message::tool_range;
use panside_trade::number::parse_number;
use panside_trade::torque::{TorqueTool, class_a_deviation_percent};
use panside_trade::units::Unit;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use crate::clock::day_of;
use crate::field::FieldProblem;
use crate::message::{
    Message, figure, tool_calibrated_after, tool_calibrated_ahead, tool_class_a, tool_date, tool_no_date,
    tool_no_name, tool_no_number, tool_past,
};
use crate::value::Tool;

/// What is to be said of a tool.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, TS)]
pub struct ToolView {
    /// What keeps it from being a tool at all, by the fields of [`Tool`].
    pub problems: Vec<FieldProblem>,
    /// That its calibration has ended, so that nothing clicked with it counts.
    pub past: Option<Message>,
    /// What else there is to say.
    pub notes: Vec<Message>,
}

/// Judges a tool on a day. A calibration that has ended is no mistake: the tool is there, and may not be used.
#[must_use]
pub fn judge(tool: &Tool, today: NaiveDate) -> ToolView {
    let mut view = ToolView::default();
    if tool.name.trim().is_empty() {
        view.tell("name", tool_no_name());
    }
    if let Some(range) = view.range(tool) {
        view.class(tool.class_percent.as_deref(), range);
    }
    view.calibration(tool, today);
    view
}

impl ToolView {
    /// Every message, so that sentences can be put in.
    pub fn each_message(&mut self, put: &mut dyn FnMut(&mut Message)) {
        let problems = self.problems.iter_mut().map(|problem| &mut problem.message);
        problems.chain(&mut self.past).chain(&mut self.notes).for_each(put);
    }

    fn tell(&mut self, field: &str, message: Message) {
        self.problems.push(FieldProblem { field: field.to_owned(), message });
    }

    fn number(&mut self, field: &str, text: &str) -> Option<f64> {
        if text.trim().is_empty() {
            self.tell(field, tool_no_number());
            return None;
        }
        parse_number(text).map_err(|error| self.tell(field, error.message())).ok()
    }

    /// Both ends of the range, where it makes sense.
    fn range(&mut self, tool: &Tool) -> Option<(Torque, Torque)> {
        let (min, max) = (self.number("min", &tool.min), self.number("max", &tool.max));
        let unit = tool.unit.parse::<Unit>().map_err(|error| self.tell("unit", error.message())).ok()?;
        let (min, max) = (min?, max?);
        let torque = |value| Measure::new(value, unit).and_then(Torque::try_from);
        let ends = torque(min).and_then(|min| Ok((min, torque(max)?)));
        let (lowest, highest) = ends.map_err(|error| self.tell("unit", error.message())).ok()?;
        // The tool is made with a deviation that is always allowed, so that only the range can be refused.
        let good = TorqueTool::new(lowest, highest, class_a_deviation_percent(highest), NaiveDate::MAX);
        if good.is_err() {
            let with = |value| format!("{} {unit}", figure(value));
            self.tell("min", tool_range(with(min), with(max)));
            return None;
        }
        Some((lowest, highest))
    }

    fn class(&mut self, text: Option<&str>, (lowest, highest): (Torque, Torque)) {
        let Some(text) = text else {
            self.notes.push(tool_class_a(figure(class_a_deviation_percent(highest))));
            return;
        };
        let Some(percent) = self.number("class_percent", text) else { return };
        if let Err(error) = TorqueTool::new(lowest, highest, percent, NaiveDate::MAX) {
            self.tell("class_percent", error.message());
        }
    }

    fn calibration(&mut self, tool: &Tool, today: NaiveDate) {
        let due = self.day("calibration_due", &tool.calibration_due);
        let on = tool.calibrated_on.as_ref().and_then(|text| self.day("calibrated_on", text));
        if let Some(on) = on
            && on > today
        {
            self.tell("calibrated_on", tool_calibrated_ahead(on.to_string(), today.to_string()));
        }
        if let (Some(on), Some(due)) = (on, due)
            && on > due
        {
            self.tell("calibration_due", tool_calibrated_after(on.to_string(), due.to_string()));
        }
        if let Some(due) = due
            && due < today
        {
            self.past = Some(tool_past(due.to_string(), today.to_string()));
        }
    }

    fn day(&mut self, field: &str, text: &str) -> Option<NaiveDate> {
        let day = day_of(text.trim());
        if day.is_none() {
            let message = if text.trim().is_empty() { tool_no_date() } else { tool_date(text) };
            self.tell(field, message);
        }
        day
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::tool;

    fn today() -> NaiveDate {
        NaiveDate::from_ymd_opt(2026, 3, 2).unwrap()
    }

    fn wrong(tool: &Tool) -> Vec<(String, Message)> {
        let problems = judge(tool, today()).problems;
        problems.into_iter().map(|problem| (problem.field, problem.message)).collect()
    }

    fn calibrated(on: &str, due: &str) -> Tool {
        Tool { calibrated_on: Some(on.into()), calibration_due: due.into(), ..tool() }
    }

    #[test]
    fn a_tool_with_its_range_and_days_is_one_and_its_class_is_told_where_none_is_given() {
        // ISO 6789 class A as `class_a_deviation_percent` has it: 4 % for a tool that ends above 10 N·m.
        let view = judge(&calibrated("2025-12-31", "2026-12-31"), today());
        assert_eq!((view.problems, view.past, view.notes), (Vec::new(), None, vec![tool_class_a("4")]));
    }

    #[test]
    fn a_range_that_is_the_wrong_way_round_is_told_in_its_own_unit() {
        let turned = Tool { min: "15,5".into(), max: "3".into(), unit: "lbf·ft".into(), ..tool() };
        assert_eq!(wrong(&turned), [("min".to_owned(), tool_range("15.5 lbf·ft", "3 lbf·ft"))]);
        let from_zero = Tool { min: "0".into(), ..tool() };
        assert_eq!(wrong(&from_zero), [("min".to_owned(), tool_range("0 N·m", "15 N·m"))]);
    }

    #[test]
    fn letters_empty_fields_and_units_that_fit_no_torque_are_told_in_their_field() {
        let typed = Tool { name: " ".into(), min: "three".into(), max: String::new(), ..tool() };
        let fields: Vec<String> = wrong(&typed).into_iter().map(|(field, _)| field).collect();
        assert_eq!(fields, ["name", "min", "max"]);
        assert_eq!(wrong(&Tool { unit: "mm".into(), ..tool() })[0].1.id, "trade-quantity-differs");
        assert_eq!(wrong(&Tool { unit: "Nmm".into(), ..tool() })[0].1.id, "trade-unit-unknown");
    }

    #[test]
    fn a_class_is_a_percentage_that_a_tool_can_have() {
        for percent in ["0", "100", "-4"] {
            let view = wrong(&Tool { class_percent: Some(percent.into()), ..tool() });
            assert_eq!((view.len(), view[0].1.id.as_str()), (1, "trade-percent-range"), "{percent}");
        }
        assert_eq!(wrong(&Tool { class_percent: Some("4,5".into()), ..tool() }), []);
    }

    #[test]
    fn a_calibration_that_has_ended_is_told_and_the_tool_is_kept_on_the_list() {
        let past = judge(&calibrated("2025-03-01", "2026-03-01"), today());
        assert_eq!((past.past, past.problems), (Some(tool_past("2026-03-01", "2026-03-02")), Vec::new()));
        let last_day = judge(&calibrated("2025-03-02", "2026-03-02"), today());
        assert_eq!(last_day.past, None, "the last day still holds");
    }

    #[test]
    fn a_calibration_in_the_future_or_after_its_own_end_is_no_calibration() {
        assert_eq!(
            wrong(&calibrated("2026-03-03", "2027-03-02")),
            [("calibrated_on".to_owned(), tool_calibrated_ahead("2026-03-03", "2026-03-02"))]
        );
        assert_eq!(
            wrong(&calibrated("2026-02-02", "2025-02-02")),
            [("calibration_due".to_owned(), tool_calibrated_after("2026-02-02", "2025-02-02"))]
        );
    }

    #[test]
    fn a_day_that_is_none_is_told() {
        assert_eq!(wrong(&calibrated("31.12.2025", "2026-12-31"))[0].1, tool_date("31.12.2025"));
        let bare = Tool { calibration_due: String::new(), ..tool() };
        assert_eq!(wrong(&bare), [("calibration_due".to_owned(), tool_no_date())]);
    }
}
