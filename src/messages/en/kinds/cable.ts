export const cable = {
  title: "Medium-voltage cables",
  purpose:
    "Each core of each cable before it is connected: insulation first, the sheath where the project asks for it, then the withstand test by alternating, very-low-frequency or direct voltage.",
  cautions: [
    "Both ends are live during the test: bar, warn and watch the far end too, and keep radio or telephone contact. Isolate, prove dead and earth under the site's permit system first.",
    "No direct voltage on service-aged polymer (XLPE) cable: it leaves charge in the insulation that can break it down in service later. Take very low frequency or power frequency instead.",
    "Part the cable from switchgear, voltage transformers and surge arresters, or agree the lower voltage with their makers.",
    "A cable holds its charge: discharge through a resistor, then earth, for as long as the maker and the local rule say, before anybody touches an end. Local code and licensed practice come first.",
  ],
};
