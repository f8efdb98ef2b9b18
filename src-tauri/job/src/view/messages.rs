//! The messages in a view, for whoever puts the sentences in.

use super::JobView;
use crate::command::Refusal;
use crate::message::Message;

impl JobView {
    /// Every message in it, for whoever puts the sentences in.
    pub fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        for step in &mut self.steps {
            for refusal in [&mut step.begin, &mut step.done, &mut step.skip, &mut step.void] {
                each_of(refusal, say);
            }
            for entry in &mut step.entries {
                entry.limits.iter_mut().chain(&mut entry.said).for_each(&mut *say);
                entry.decision.iter_mut().for_each(|table| table.each_message(say));
                entry.bolts.iter_mut().for_each(|map| map.each_message(say));
            }
        }
        self.vehicle_actions.iter_mut().for_each(|made| each_of(&mut made.refusal, say));
        self.gates.iter_mut().flat_map(|gate| &mut gate.last).for_each(&mut *say);
        self.signs.iter_mut().for_each(|sign| each_of(&mut sign.renew, say));
        self.turned_up.asked.iter_mut().flat_map(|one| &mut one.said).for_each(&mut *say);
        each_of(&mut self.finish, say);
        each_of(&mut self.stop, say);
    }
}

impl Refusal {
    /// Every message in it, for whoever puts the sentences in.
    pub fn each_message(&mut self, say: &mut dyn FnMut(&mut Message)) {
        say(&mut self.message);
        self.unmet.iter_mut().for_each(say);
    }
}

fn each_of(refusal: &mut Option<Refusal>, say: &mut dyn FnMut(&mut Message)) {
    if let Some(refusal) = refusal {
        refusal.each_message(say);
    }
}
