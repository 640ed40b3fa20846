-- Bench log, schema 2. One statement ends with a semicolon at the end of a line; log-schema.md explains every column.
CREATE TABLE calibration (
  id INTEGER PRIMARY KEY,
  fields TEXT NOT NULL UNIQUE
);
CREATE TABLE power_up (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  uuid TEXT NOT NULL UNIQUE,
  label TEXT,
  set_name TEXT NOT NULL,
  started_epoch_ms INTEGER NOT NULL,
  ended_epoch_ms INTEGER,
  stream TEXT NOT NULL CHECK (stream IN ('raw', 'reduced')),
  probe_kind TEXT NOT NULL,
  hello TEXT NOT NULL,
  calibration INTEGER NOT NULL REFERENCES calibration (id),
  sheet TEXT NOT NULL,
  effective_sheet TEXT NOT NULL,
  limits TEXT NOT NULL,
  room_celsius REAL,
  as_found INTEGER NOT NULL DEFAULT 0,
  baseline INTEGER NOT NULL DEFAULT 0,
  state TEXT NOT NULL CHECK (state IN ('open', 'finished', 'repacked')),
  outcome TEXT,
  ended TEXT,
  summary TEXT
);
CREATE TABLE stretch (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  first_index INTEGER NOT NULL,
  PRIMARY KEY (power_up, position)
) WITHOUT ROWID;
CREATE TABLE chunk (
  id INTEGER PRIMARY KEY,
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  channel INTEGER NOT NULL,
  version INTEGER NOT NULL,
  count INTEGER NOT NULL,
  first_index INTEGER NOT NULL,
  crc32c INTEGER NOT NULL,
  data BLOB NOT NULL,
  UNIQUE (power_up, position, channel)
);
CREATE TABLE tail (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  position INTEGER NOT NULL,
  version INTEGER NOT NULL,
  count INTEGER NOT NULL,
  crc32c INTEGER NOT NULL,
  data BLOB NOT NULL,
  PRIMARY KEY (power_up, position)
);
CREATE TABLE event (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  kind TEXT NOT NULL,
  place INTEGER NOT NULL,
  micros INTEGER NOT NULL,
  fields TEXT NOT NULL,
  PRIMARY KEY (power_up, number)
) WITHOUT ROWID;
CREATE TABLE alarm (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  transition INTEGER NOT NULL,
  number INTEGER NOT NULL,
  rule TEXT NOT NULL,
  rail INTEGER NOT NULL,
  rail_name TEXT,
  at_ms REAL NOT NULL,
  since_ms REAL NOT NULL,
  changed_ms REAL NOT NULL,
  priority TEXT NOT NULL,
  state TEXT NOT NULL,
  value REAL,
  at_most INTEGER NOT NULL,
  limit_value REAL,
  unit TEXT,
  text TEXT,
  folded_under INTEGER NOT NULL,
  PRIMARY KEY (power_up, transition)
) WITHOUT ROWID;
CREATE TABLE trip (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  event INTEGER NOT NULL,
  number INTEGER NOT NULL,
  cause TEXT NOT NULL,
  channel TEXT,
  crossed_us INTEGER NOT NULL,
  decided_us INTEGER NOT NULL,
  opened_us INTEGER NOT NULL,
  value_counts INTEGER NOT NULL,
  limit_counts INTEGER NOT NULL,
  PRIMARY KEY (power_up, event)
) WITHOUT ROWID;
CREATE TABLE capture (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  event INTEGER NOT NULL,
  trip_number INTEGER NOT NULL,
  decided_us INTEGER NOT NULL,
  missing INTEGER NOT NULL,
  counts TEXT NOT NULL,
  PRIMARY KEY (power_up, event)
) WITHOUT ROWID;
CREATE TABLE mark (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  event INTEGER NOT NULL,
  micros INTEGER NOT NULL,
  text TEXT NOT NULL,
  PRIMARY KEY (power_up, event)
) WITHOUT ROWID;
CREATE TABLE gap (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  first_index INTEGER NOT NULL,
  conversions INTEGER NOT NULL,
  cause TEXT NOT NULL CHECK (cause IN ('link', 'log'))
);
CREATE INDEX gap_of ON gap (power_up);
CREATE TABLE clock_fit (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  micros INTEGER NOT NULL,
  host_epoch_ms INTEGER NOT NULL,
  offset_us INTEGER NOT NULL,
  drift_ppm REAL NOT NULL
);
CREATE INDEX clock_fit_of ON clock_fit (power_up);
CREATE TABLE second (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  place INTEGER NOT NULL,
  second INTEGER NOT NULL,
  conversions INTEGER NOT NULL,
  i_ua INTEGER, i_ua_lowest INTEGER, i_ua_highest INTEGER,
  j_ua INTEGER, j_ua_lowest INTEGER, j_ua_highest INTEGER,
  v_uv INTEGER, v_uv_lowest INTEGER, v_uv_highest INTEGER,
  r1_uv INTEGER, r1_uv_lowest INTEGER, r1_uv_highest INTEGER,
  r2_uv INTEGER, r2_uv_lowest INTEGER, r2_uv_highest INTEGER,
  r3_uv INTEGER, r3_uv_lowest INTEGER, r3_uv_highest INTEGER,
  h_nv INTEGER, h_nv_lowest INTEGER, h_nv_highest INTEGER,
  m_uv INTEGER, m_uv_lowest INTEGER, m_uv_highest INTEGER,
  PRIMARY KEY (power_up, place)
) WITHOUT ROWID;
CREATE TABLE span_level (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  level INTEGER NOT NULL,
  position INTEGER NOT NULL,
  first_bucket INTEGER NOT NULL,
  buckets INTEGER NOT NULL,
  version INTEGER NOT NULL,
  crc32c INTEGER NOT NULL,
  data BLOB NOT NULL,
  PRIMARY KEY (power_up, level, position)
);
CREATE TABLE cold_check (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  set_name TEXT NOT NULL,
  epoch_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  from_point TEXT NOT NULL,
  to_point TEXT NOT NULL,
  value REAL,
  unit TEXT,
  note TEXT
);
CREATE TABLE trial (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  set_name TEXT NOT NULL,
  epoch_ms INTEGER NOT NULL,
  wire TEXT NOT NULL,
  place TEXT NOT NULL,
  power_up INTEGER REFERENCES power_up (id) ON DELETE SET NULL,
  fields TEXT NOT NULL
);
CREATE TABLE job (
  set_name TEXT PRIMARY KEY,
  state TEXT NOT NULL,
  waits_for TEXT,
  changed_epoch_ms INTEGER NOT NULL,
  note TEXT
) WITHOUT ROWID;
CREATE VIEW power_up_readable AS
  SELECT id AS number, datetime(started_epoch_ms / 1000, 'unixepoch') AS started_utc, set_name, label, outcome, ended,
    probe_kind, stream, state
  FROM power_up ORDER BY id;
CREATE VIEW second_readable AS
  SELECT power_up AS number, second AS probe_second, conversions,
    i_ua / 1e6 AS supply_a, i_ua_lowest / 1e6 AS supply_a_lowest, i_ua_highest / 1e6 AS supply_a_highest,
    j_ua / 1e6 AS fine_a, v_uv / 1e6 AS supply_v, v_uv_lowest / 1e6 AS supply_v_lowest,
    v_uv_highest / 1e6 AS supply_v_highest, r1_uv / 1e6 AS rail1_v, r2_uv / 1e6 AS rail2_v, r3_uv / 1e6 AS rail3_v,
    h_nv / 1e6 AS head_mv, h_nv_lowest / 1e6 AS head_mv_lowest, h_nv_highest / 1e6 AS head_mv_highest,
    m_uv / 1e3 AS meter_mv, m_uv_lowest / 1e3 AS meter_mv_lowest, m_uv_highest / 1e3 AS meter_mv_highest
  FROM second ORDER BY power_up, place;
CREATE VIEW alarm_readable AS
  SELECT power_up AS number, changed_ms / 1000 AS at_s, rule, rail_name, priority, state, value, limit_value, unit, text
  FROM alarm ORDER BY power_up, transition;
CREATE INDEX power_up_of_set ON power_up (set_name, started_epoch_ms);
CREATE VIEW trip_readable AS
  SELECT power_up AS number, opened_us / 1e6 AS at_s, cause, channel, (opened_us - crossed_us) / 1e3 AS took_ms,
    value_counts, limit_counts
  FROM trip ORDER BY power_up, event;
CREATE VIEW mark_readable AS
  SELECT power_up AS number, micros / 1e6 AS at_s, text
  FROM mark ORDER BY power_up, event;
