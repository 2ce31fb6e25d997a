//! What records cost a shop, and where an old rule differs, told in plain lines.

use super::cautions::Cautions;
use super::page::Page;
use super::sentence::Given;
use super::teller::Teller;
use super::text::heading;
use crate::estimate::Audit;
use crate::record::Shadow;
use alloc::string::String;

/// What records cost a shop in plain English lines of at most 80 columns, with every caution in full.
#[must_use]
pub fn audit(audit: &Audit) -> String {
    Teller::english().audit(audit)
}

/// Where an old rule differs in plain English lines of at most 80 columns.
///
/// ```
/// use brimline::{Pack, record::shadow, report};
/// let told = shadow(&Pack::embedded()?, &[]);
/// assert!(report::shadow(&told).contains("0 jobs"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn shadow(shadow: &Shadow) -> String {
    Teller::english().shadow(shadow)
}

impl Teller {
    /// What records cost a shop in plain lines of at most 80 columns, with every caution in full.
    #[must_use]
    pub fn audit(&self, audit: &Audit) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, None);
        cautions.need(audit.cautions());
        heading(self, &mut page, "audit");
        for item in audit.items().iter().filter(|item| item.count > 0) {
            let given = Given::nothing()
                .with("count", item.count)
                .with("net", item.net);
            page.put("  ", &self.sentence("audit", item.id, &given));
            if item.unpriced > 0 && item.id != "promise_missed" {
                let given = Given::nothing().with("count", item.unpriced);
                page.put("      ", &self.sentence("phrase", "audit_unpriced", &given));
            }
        }
        let given = Given::nothing().with("net", audit.net());
        page.put("  ", &self.sentence("phrase", "audit_total", &given));
        cautions.tell(&mut page);
        page.into_text()
    }

    /// Where an old rule differs in plain lines of at most 80 columns.
    #[must_use]
    pub fn shadow(&self, shadow: &Shadow) -> String {
        let mut page = Page::new();
        heading(self, &mut page, "shadow");
        let given = Given::nothing()
            .with("jobs", shadow.jobs())
            .with("same", shadow.same())
            .with("not_compared", shadow.not_compared());
        page.put("  ", &self.sentence("phrase", "shadow_counted", &given));
        for difference in shadow.differences() {
            let (was, now) = (difference.was, difference.now);
            let given = Given::nothing()
                .with("was_verdict", self.word("verdict", was))
                .with("now_verdict", self.word("verdict", now))
                .with("was_by_sheet", self.word("by_sheet", was))
                .with("now_by_sheet", self.word("by_sheet", now));
            let grade = difference.grade.slug();
            let given = Given::nothing()
                .with("job_id", &difference.job)
                .with("grade", grade)
                .with("grade_words", self.word("evidence_grade", grade))
                .with("difference", self.sentence("shadow", difference.id, &given));
            page.put("  ", &self.sentence("phrase", "shadow_job", &given));
        }
        page.into_text()
    }
}
