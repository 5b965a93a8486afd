// The five stories of examples/ as the page shows them, and the views of the page.

/** What each story ends in: its own story.md says it. */
export const stories = {
  'first-raised-reading': 'Raised pressure, not yet confirmed',
  'lisinopril-at-fourteen-weeks': 'Chronic hypertension',
  'protein-and-pressure': 'Pre-eclampsia',
  'severe-with-headache': 'Imminent eclampsia',
  'six-days-after-birth': 'Hypertension after birth',
};

export const views = ['trend', 'note', 'requests', 'check'];

/** The leading class, as the page words it. */
export const classOf = (page) => page.textContent('.answer .class');
