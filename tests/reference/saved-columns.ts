/* The columns of saved tables, each asked of the library's own tables by SQL that shares nothing with Stillroom. */

const yesNo = (column: string): string => `CASE ${column} WHEN 1 THEN 'yes' WHEN 0 THEN 'no' END`;
const figure = (kind: string): string => {
  const ends = `CASE WHEN low IS NULL OR high IS NULL THEN NULL ELSE format('%.15g–%.15g', low, high) END`;
  return `(SELECT coalesce(value, ${ends}) FROM material_figure WHERE material_id = m.id AND kind = '${kind}')`;
};
const words = (list: string): string =>
  `(SELECT group_concat(word, ', ') FROM (SELECT word FROM material_word WHERE material_id = m.id AND list = '${list}' ORDER BY position))`;
const offer = (column: string): string =>
  `(SELECT ${column} FROM material_offer WHERE material_id = m.id ORDER BY date DESC, position DESC LIMIT 1)`;
const sourceOf = (kind: string, column: string): string =>
  `(SELECT ${column} FROM material_figure WHERE material_id = m.id AND kind = '${kind}')`;

/** What a table's columns hold, asked of the library's own tables; as its schema has them. */
export const HELD: Readonly<
  Record<string, { from: string; columns: Record<string, string>; noun?: string; table?: number }>
> = {
  materials: {
    from: "material m WHERE status <> 'archived'",
    columns: {
      ...{ 'Trade name': 'trade_name', Code: 'code', Status: 'status', Charge: 'charge', Form: 'form' },
      ...{ Architecture: 'architecture', 'Emulsion type': 'emulsion_type', 'Usual phase': 'phase_of_use' },
      ...{ 'Consistency when cold': 'consistency', Appearance: 'appearance', 'Body it builds': 'body' },
      'Tolerance to electrolyte': 'electrolyte_tolerance',
      'Needs neutralising': yesNo('needs_neutralising'),
      'Works cold': yesNo('cold_processable'),
      'Certified organic': yesNo('certified_organic'),
      ...{ Functions: words('function'), 'Dissolves in': words('soluble in'), Hazards: words('hazard') },
      ...{ 'Keep from': words('keep from'), Origin: 'origin', Notes: 'notes', Handling: 'handling' },
      'Usage, lowest (%)': 'usage_min_ppm / 10000.0',
      'Usage, typical (%)': 'usage_typical_ppm / 10000.0',
      'Usage, highest (%)': 'usage_max_ppm / 10000.0',
      ...{ 'How the usage is known': 'usage_provenance', 'Source of the usage range': 'usage_source' },
      ...{ HLB: figure('hlb'), EACN: figure('eacn'), 'Acid value (mg KOH/g)': figure('acidValue') },
      ...{ 'Density (g/mL)': figure('density'), 'Molar mass (g/mol)': figure('molarMass') },
      ...{ 'How HLB is known': sourceOf('hlb', 'provenance'), 'Source of HLB': sourceOf('hlb', 'source') },
      'Melting or drop point (°C)': figure('meltingPoint'),
      'Source of Melting or drop point': sourceOf('meltingPoint', 'source'),
      ...{ 'Not colder than (°C)': 'storage_min_c', 'Not warmer than (°C)': 'storage_max_c' },
      ...{ 'Shelf life (months)': 'shelf_life_months', 'After opening (months)': 'after_opening_months' },
      'Legal limit in the finished product (%)': 'limit_ppm / 10000.0',
      'Legal limit: text and date': 'limit_source',
      ...{ Supplier: offer('supplier'), 'Supplier’s item code': offer('item_code') },
      ...{
        'Pack (kg)': offer('pack_mg / 1e6'),
        Currency: offer('currency'),
        'Date of the price': offer('date'),
      },
      'Price of the pack': offer('price_minor / 100.0'),
      Changed: 'substr(updated_at, 1, 10)',
    },
  },
  formulas: {
    from: 'formula f WHERE archived = 0',
    columns: {
      ...{ Name: 'name', Code: 'code', 'Product type': 'product_type', Use: 'use', Purpose: 'purpose' },
      Phases: '(SELECT count(*) FROM formula_phase WHERE formula_id = f.id)',
      Lines: '(SELECT count(*) FROM formula_line WHERE formula_id = f.id)',
      ...{ Notes: 'notes', Archived: yesNo('archived'), Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  lines: {
    ...{ noun: 'formulas', table: 1 },
    from: `(SELECT l.*, f.code AS f_code, f.name AS f_name, p.position AS p_at, p.title, m.trade_name, m.code AS m_code,
        1000000 - sum(CASE l.to_hundred WHEN 1 THEN 0 ELSE l.ppm END) OVER (PARTITION BY l.formula_id) AS rest
      FROM formula_line l JOIN formula f ON f.id = l.formula_id JOIN formula_phase p ON p.id = l.phase_id AND p.formula_id = f.id
      JOIN material m ON m.id = l.material_id WHERE f.archived = 0)`,
    columns: {
      ...{ 'Formula code': 'f_code', Formula: 'f_name', Phase: 'char(65 + p_at)', 'Phase title': 'title' },
      ...{ Material: 'trade_name', 'Material code': 'm_code', Note: 'note' },
      'Share (%)': 'CASE to_hundred WHEN 1 THEN max(rest, 0) ELSE ppm END / 10000.0',
      'q.s. to 100 %': "CASE to_hundred WHEN 1 THEN 'yes' END",
    },
  },
  batches: {
    from: `batch b JOIN formula_version v ON v.id = b.version_id JOIN formula f ON f.id = v.formula_id
      LEFT JOIN batch_outcome o ON o.seq = (SELECT max(seq) FROM batch_outcome WHERE batch_id = b.id)`,
    columns: {
      ...{ Batch: 'b.number', 'Formula code': 'f.code', Version: 'v.number', Note: 'b.note' },
      ...{ 'Planned on': 'substr(b.created_at, 1, 10)', 'Weighed in (kg)': 'b.total_mg / 1e6' },
      ...{ 'Finished on': 'o.finished_on', 'Obtained (kg)': 'o.obtained_mg / 1e6' },
      ...{ 'Units filled': 'o.units_filled', 'Recorded by': 'o.by', Remarks: 'o.remarks' },
    },
  },
  trials: {
    from: 'trial_series s',
    columns: {
      ...{ Title: 'title', 'Target HLB': "content ->> '$.targetHlb'", Notes: "content ->> '$.notes'" },
      'Made for': "(SELECT name FROM formula WHERE id = content ->> '$.formulaId')",
      'Each batch (g)': "(content ->> '$.batchMg') / 1e3",
      'Balance readability (g)': "(content ->> '$.readabilityMg') / 1e3",
      Trials: "json_array_length(content, '$.trials')",
      'Chosen trial': `(SELECT t.value ->> '$.label' FROM json_each(s.content, '$.trials') t
        WHERE t.key = s.content ->> '$.chosen')`,
      ...{ 'Made on': 'substr(created_at, 1, 10)', Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  'trials of series': {
    ...{ noun: 'trials', table: 1 },
    from: "trial_series s, json_each(s.content, '$.trials') t",
    columns: {
      ...{ Series: 'title', Trial: "t.value ->> '$.label'", HLB: "t.value ->> '$.hlb'" },
      'Emulsifiers together (%)': "(t.value ->> '$.levelPpm') / 10000.0",
      Chosen: "CASE WHEN t.key = (s.content ->> '$.chosen') THEN 'yes' END",
      Observations: "t.value ->> '$.result'",
    },
  },
  'lines of trials': {
    ...{ noun: 'trials', table: 2 },
    from: `trial_series s, json_each(s.content, '$.trials') t, json_each(t.value, '$.lines') l
      JOIN material m ON m.id = (l.value ->> '$.materialId')`,
    columns: {
      ...{ Series: 's.title', Trial: "t.value ->> '$.label'", Part: "l.value ->> '$.part'" },
      ...{ Material: 'm.trade_name', 'Material code': 'm.code' },
      'Share (%)': "(l.value ->> '$.ppm') / 10000.0",
      'Mass (g)': "(l.value ->> '$.mg') / 1e3",
    },
  },
  substances: {
    from: 'substance s',
    columns: {
      ...{ 'INCI or EU common name': 'name', 'US name, where it differs': 'us_name', 'CAS numbers': 'cas' },
      ...{ 'CI number': 'colour_index', 'Chemical formula': 'formula', 'Declared as': 'allergen_label' },
      'Point of departure (mg/kg body weight per day)': 'pod',
      'Source of these figures': 'safety_source',
      ...{ 'Hansen parameter, polar (MPa½)': 'hansen_p', 'Source of the parameters': 'hansen_source' },
      ...{ Notes: 'notes', Changed: 'substr(updated_at, 1, 10)' },
    },
  },
  limits: {
    from: 'legal_limit',
    columns: {
      ...{ 'Substance or group': 'subject', 'That is': 'subject_kind', 'In the product as': 'purpose' },
      ...{ 'Limit (% of the product)': 'percent', 'Least, of an active (% of the product)': 'min_percent' },
      ...{ 'pH from': 'ph_low', 'pH to': 'ph_high', Use: 'use', 'Text and entry': 'source' },
      ...{ Rule: 'rule', 'Counted as': 'expressed_as', 'Words that the label must carry': 'label_phrase' },
    },
  },
};
