//! What this crate says to a person, as message ids with arguments. The sentences stand in `en/trade.ftl` of
//! `panside-messages`.

pub mod working;

#[cfg(test)]
mod tests {
    panside_messages::testing::hold!("trade", super::working::MESSAGES);
}
