//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/trade.ftl` of
//! `panside-messages`.

pub mod working;

use panside_messages::{Arg, Message};

panside_messages::messages! {
    // Numbers, units, tables and tools that can't be taken.
    trade_number_empty "trade-number-empty" ();
    trade_number_character "trade-number-character" (text, character);
    trade_number_separators "trade-number-separators" (text);
    trade_number_unfinished "trade-number-unfinished" (text);
    trade_number_too_large "trade-number-too-large" (text);
    trade_amount_empty "trade-amount-empty" ();
    trade_amount_below_zero "trade-amount-below-zero" (text);
    trade_amount_ambiguous "trade-amount-ambiguous" (text, whole, parts);
    trade_amount_places "trade-amount-places" (text);
    trade_amount_too_large "trade-amount-too-large" (text, most);
    trade_sum_too_large "trade-sum-too-large" ();
    trade_currency_missing "trade-currency-missing" (known);
    trade_currency_unknown "trade-currency-unknown" (text, known);
    trade_unit_unknown "trade-unit-unknown" (text, known);
    trade_quantity_differs "trade-quantity-differs" (unit, found, wanted);
    trade_not_measurable "trade-not-measurable" (value);
    trade_below_lowest "trade-below-lowest" (value, quantity, lowest);
    trade_table_too_short "trade-table-too-short" (points);
    trade_table_not_finite "trade-table-not-finite" (position);
    trade_table_not_rising "trade-table-not-rising" (previous, next);
    trade_outside_table "trade-outside-table" (value, from, to);
    trade_chart_marks "trade-chart-marks" (temperature, low, high);
    trade_stick_below_end "trade-stick-below-end" (value);
    trade_agreement_negative "trade-agreement-negative" (value);
    trade_percent_range "trade-percent-range" (percent);
    trade_target_not_positive "trade-target-not-positive" (value);
    trade_no_stage "trade-no-stage" ();
    trade_tool_range "trade-tool-range" (lowest, highest);

    // Figures that can't be worked out.
    trade_clock_went_back "trade-clock-went-back" (position);
    trade_in_the_future "trade-in-the-future" (position);
    trade_same_moment "trade-same-moment" (position);
    trade_no_reading "trade-no-reading" ();
    trade_level_not_known "trade-level-not-known" ();
    trade_gain_not_positive "trade-gain-not-positive" (gain);
    trade_no_addition "trade-no-addition" ();
    trade_addition_empty "trade-addition-empty" (position);
    trade_share_range "trade-share-range" (percent);
    trade_pour_empty "trade-pour-empty" ();
    trade_too_many_pours "trade-too-many-pours" (pours);
    trade_hold_back_too_large "trade-hold-back-too-large" (hold_back);
    trade_density_range "trade-density-range" (density);
    trade_fluid_temperature "trade-fluid-temperature" (temperature);
    trade_nothing_measured "trade-nothing-measured" ();
    trade_copper_range "trade-copper-range" (temperature, from, to);
    trade_limits_turned "trade-limits-turned" (lowest, highest);
    trade_meter_percent "trade-meter-percent" (percent);
    trade_leads_above_reading "trade-leads-above-reading" (leads);
    trade_code_form "trade-code-form" (code);
    trade_code_padding "trade-code-padding" (code);
    trade_code_answer "trade-code-answer" (bytes, why);
    trade_tool_length "trade-tool-length" (length);
    trade_adapter_length "trade-adapter-length" (length);
    trade_adapter_angle "trade-adapter-angle" (angle);
    trade_adapter_reach "trade-adapter-reach" ();
    trade_angle_stage "trade-angle-stage" (angle, tolerance);
    trade_angle_turned "trade-angle-turned" (angle);
    trade_calibration_months "trade-calibration-months" (months);
    trade_thread_form "trade-thread-form" (text);
    trade_thread_range "trade-thread-range" (diameter, pitch);
    trade_grade_form "trade-grade-form" (text);
    trade_no_bolts "trade-no-bolts" ();
    trade_bolt_twice "trade-bolt-twice" (id);
    trade_bolts_in_one_place "trade-bolts-in-one-place" (first, second);
    trade_bolt_unknown "trade-bolt-unknown" (id);
    trade_no_contact "trade-no-contact" ();
    trade_glove_level "trade-glove-level" (level);
    trade_emissivity_range "trade-emissivity-range" (lowest, highest);
    trade_radiation "trade-radiation" (value);
    trade_not_clocked_on "trade-not-clocked-on" (position);
    trade_reason_missing "trade-reason-missing" (position);
    trade_too_long "trade-too-long" ();
    trade_answer_too_short "trade-answer-too-short" ();
    trade_answer_first_byte "trade-answer-first-byte" ();
    trade_answer_count "trade-answer-count" ();

    // What is measured.
    trade_quantity_temperature "trade-quantity-temperature" ();
    trade_quantity_length "trade-quantity-length" ();
    trade_quantity_torque "trade-quantity-torque" ();
    trade_quantity_volume "trade-quantity-volume" ();
    trade_quantity_resistance "trade-quantity-resistance" ();
    trade_quantity_voltage "trade-quantity-voltage" ();
    trade_quantity_distance "trade-quantity-distance" ();
    trade_quantity_rotation_speed "trade-quantity-rotation-speed" ();
    trade_quantity_time "trade-quantity-time" ();
    trade_quantity_angle "trade-quantity-angle" ();
    trade_quantity_temperature_difference "trade-quantity-temperature-difference" ();
    trade_quantity_density "trade-quantity-density" ();
    trade_quantity_force "trade-quantity-force" ();
    trade_quantity_rise "trade-quantity-rise" ();
    trade_quantity_pressure "trade-quantity-pressure" ();
    trade_lowest_absolute_zero "trade-lowest-absolute-zero" ();
    trade_lowest_zero "trade-lowest-zero" ();
}

/// What [`crate::TradeError::ToolRange`] says, of a range as it was typed.
pub fn tool_range(lowest: impl Into<Arg>, highest: impl Into<Arg>) -> Message {
    trade_tool_range(lowest, highest)
}

/// What [`crate::TradeError::ChartMarks`] says, of a point as it was typed.
pub fn chart_marks(temperature: impl Into<Arg>, low: impl Into<Arg>, high: impl Into<Arg>) -> Message {
    trade_chart_marks(temperature, low, high)
}

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("trade", &[super::MESSAGES, super::working::MESSAGES].concat());
}
