// Runs in the browser by kerfbook.browser.ModulesTest.
const { heading } = await load('/views/compare.js');

const row = (name, component, campaign) => ({ name, figures: { component_person_usv: component, campaign_person_usv: campaign } });

test('BY HAND: the headline names the least dose of the campaign, not that of the component', () => {
  equal(heading('Ring', [row('shear', 4000, 33300), row('plasma', 5000, 33200)]), 'Ring: plasma takes the least dose for the campaign, 33.2 person-mSv');
});
test('EDGE: where no technique applies none is named', () => {
  equal(heading('Ring', [{ name: 'saw', not_applicable: 'it is too thick' }]), 'No technique fits Ring');
});
