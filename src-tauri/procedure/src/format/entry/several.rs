//! More than one answer of a list, such as all that lies in a pan.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use ts_rs::TS;

use super::kind::{Kind, Listed, Read, SheetNeed, Wrong, not_good, twice};
use crate::message::*;

/// What may be found, any number of it at once. The worst of what is found decides.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[ts(rename = "AskSeveral")]
#[serde(deny_unknown_fields)]
pub struct Several {
    /// What may be found, at least two.
    pub options: Vec<SeveralOption>,
    /// The classes of the options, the worst last: of all that is found, the worst class is the entry's.
    #[ts(skip)]
    pub ranked: Vec<String>,
    /// The class where nothing of the list is found. Absent: at least one must be.
    #[serde(default)]
    pub none: Option<String>,
    /// The classes with which the work goes on. Any other must hold the step, end the job or change something. Empty
    /// where no class is better than another.
    #[serde(default)]
    #[ts(skip)]
    pub good: Vec<String>,
}

/// One thing that may be found.
#[derive(Debug, Clone, Serialize, Deserialize, JsonSchema, TS)]
#[serde(deny_unknown_fields)]
pub struct SeveralOption {
    /// Short name, unique in its list.
    pub id: String,
    /// What the button says.
    pub label: String,
    /// What it makes of the entry where nothing worse is found.
    #[ts(skip)]
    pub class: String,
}

impl Several {
    /// The class of what was found, by the options' ids; `None` where an id is none of the options, or nothing was found
    /// and something must be.
    #[must_use]
    pub fn class_of<'a>(&'a self, found: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
        let mut worst: Option<usize> = None;
        for id in found {
            let option = self.options.iter().find(|option| option.id == id)?;
            let rank = self.ranked.iter().position(|class| *class == option.class)?;
            worst = worst.max(Some(rank));
        }
        worst.map_or(self.none.as_deref(), |rank| Some(self.ranked[rank].as_str()))
    }
}

impl Kind for Several {
    fn classes(&self) -> Vec<&str> {
        let none = self.none.iter().filter(|none| !self.ranked.contains(none));
        none.chain(&self.ranked).map(String::as_str).collect()
    }

    fn holds(&self) -> &'static [&'static str] {
        &[]
    }

    fn good(&self) -> Option<Vec<&str>> {
        (!self.good.is_empty()).then(|| self.good.iter().map(String::as_str).collect())
    }

    fn planned(&self) -> Option<&'static str> {
        None
    }

    fn measures(&self) -> bool {
        false
    }

    fn sheet_needs(&self) -> Vec<SheetNeed<'_>> {
        Vec::new()
    }

    fn reads(&self) -> Vec<Read<'_>> {
        Vec::new()
    }

    fn lists(&self) -> Vec<Listed> {
        vec![
            Listed { at: "/options", what: "options", length: self.options.len() },
            Listed { at: "/ranked", what: "classes", length: self.ranked.len() },
        ]
    }

    fn judges(&self) -> bool {
        true
    }

    fn answers(&self) -> bool {
        true
    }

    fn wrong(&self) -> Vec<Wrong> {
        let ids = twice("/options", self.options.iter().map(|option| option.id.as_str()));
        let mut wrong: Vec<Wrong> =
            ids.chain(twice("/ranked", self.ranked.iter().map(String::as_str))).collect();
        if self.options.len() < 2 {
            wrong.push(Wrong::new("/options", problem_several()));
        }
        for (at, option) in self.options.iter().enumerate() {
            if !self.ranked.contains(&option.class) {
                wrong.push(Wrong::new(&format!("/options/{at}/class"), problem_not_ranked(&option.class)));
            }
        }
        for (at, class) in self.ranked.iter().enumerate() {
            if !self.options.iter().any(|option| option.class == *class) {
                wrong.push(Wrong::new(&format!("/ranked/{at}"), problem_rank_idle(class)));
            }
        }
        wrong.extend(not_good(&self.good, &self.classes()));
        wrong
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pan() -> Several {
        let option =
            |id: &str, class: &str| SeveralOption { id: id.into(), label: id.into(), class: class.into() };
        Several {
            options: vec![option("paste", "usual"), option("flakes", "worn"), option("chips", "broken")],
            ranked: ["usual", "worn", "broken"].map(str::to_owned).to_vec(),
            none: Some("clean".into()),
            good: vec!["clean".into(), "usual".into()],
        }
    }

    #[test]
    fn the_worst_of_what_is_found_decides_in_whatever_order() {
        let pan = pan();
        assert_eq!(pan.class_of(["paste"]), Some("usual"));
        assert_eq!(pan.class_of(["chips", "paste"]), Some("broken"));
        assert_eq!(pan.class_of(["paste", "flakes"]), Some("worn"));
        assert_eq!(pan.class_of([]), Some("clean"));
        assert_eq!(pan.class_of(["sealant"]), None);
        assert_eq!(Several { none: None, ..pan }.class_of([]), None);
    }

    #[test]
    fn a_list_that_cannot_decide_is_wrong() {
        assert_eq!(pan().wrong(), []);
        let said = |pan: Several| pan.wrong().into_iter().map(|one| one.at).collect::<Vec<_>>();
        let mut unranked = pan();
        unranked.ranked.pop();
        assert_eq!(said(unranked), ["/options/2/class"]);
        let mut idle = pan();
        idle.ranked.push("melted".into());
        assert_eq!(said(idle), ["/ranked/3"]);
        let mut same = pan();
        same.options[1].id = "paste".into();
        assert_eq!(said(same), ["/options/1"]);
        let mut good = pan();
        good.good.push("dirty".into());
        assert_eq!(said(good), ["/good/2"]);
        let mut one = pan();
        one.options.truncate(1);
        one.ranked.truncate(1);
        one.good.truncate(1);
        assert_eq!(said(one), ["/options"]);
    }
}
