/** Countries of the holiday library by ISO 3166 code; held against the library by a test, so that a form need not load it. */
const CODES = 'AD AE AG AI AL AM AO AR AS AT AU AW AX AZ BA BB BD BE BF BG BH BI BJ BL BM BN BO BQ BR BS BW BY BZ CA CC CD CF CG CH CI CK CL CM CN CO CR CU CV CW CX '
  + 'CY CZ DE DJ DK DM DO DZ EC EE EG EH ER ES ET FI FJ FO FR GA GB GD GE GF GG GH GI GL GM GN GP GQ GR GT GU GW GY HK HN HR HT HU IC ID IE IL IM IN IR IS '
  + 'IT JE JM JP KE KM KN KR KY KZ LC LI LK LR LS LT LU LV LY MA MC MD ME MF MG MK ML MQ MR MS MT MU MW MX MY MZ NA NC NE NF NG NI NL NO NZ PA PE PF PH PK '
  + 'PL PM PR PT PY RE RO RS RU RW SA SC SD SE SG SH SI SJ SK SL SM SN SO SR SS ST SV SX SZ TC TD TG TH TN TO TR TT TW TZ UA UG US UY UZ VA VC VE VG VI VN '
  + 'VU WF XK YT ZA ZM ZW';

/** Countries whose public holidays are known, with their English names, by name. */
export function listHolidayCountries(): readonly { readonly code: string; readonly name: string }[] {
  const names = new Intl.DisplayNames(['en'], { type: 'region' });
  return CODES.split(' ').map((code) => ({ code, name: names.of(code) ?? code })).toSorted((a, b) => a.name.localeCompare(b.name, 'en'));
}
