-- Brings a bench log from schema 2 to schema 3: who a trial is charged to and by which rules a power-up was judged
-- (power_up), findings, jobs, photographs; readable views count from closing, in physical values. A job of schema 2
-- becomes a job with one entry for its state. The program then fills trial_wire and trial_place from the labels
-- (log-schema.md, "Trials").
ALTER TABLE power_up ADD COLUMN rules_version INTEGER NOT NULL DEFAULT 1;
ALTER TABLE power_up ADD COLUMN trial_wire TEXT;
ALTER TABLE power_up ADD COLUMN trial_place TEXT;
ALTER TABLE power_up ADD COLUMN job_uuid TEXT;
ALTER TABLE cold_check ADD COLUMN job_uuid TEXT;
ALTER TABLE cold_check ADD COLUMN fields TEXT NOT NULL DEFAULT '{}';
ALTER TABLE trial ADD COLUMN job_uuid TEXT;
ALTER TABLE job RENAME TO job_of_schema_2;
CREATE TABLE finding (
  power_up INTEGER NOT NULL REFERENCES power_up (id) ON DELETE CASCADE,
  number INTEGER NOT NULL,
  finding TEXT NOT NULL,
  severity TEXT NOT NULL CHECK (severity IN ('fault', 'advice', 'note')),
  from_ms REAL,
  to_ms REAL,
  rail INTEGER,
  caused_by INTEGER,
  fields TEXT NOT NULL,
  text TEXT,
  PRIMARY KEY (power_up, number)
) WITHOUT ROWID;
CREATE TABLE job (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  set_name TEXT NOT NULL,
  created_epoch_ms INTEGER NOT NULL
);
CREATE TABLE job_entry (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  job_uuid TEXT NOT NULL REFERENCES job (uuid) ON DELETE CASCADE,
  epoch_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  subject TEXT,
  power_up_uuid TEXT,
  amends_uuid TEXT,
  text TEXT,
  fields TEXT NOT NULL
);
CREATE INDEX job_entry_of ON job_entry (job_uuid, epoch_ms);
CREATE TABLE photograph (
  id INTEGER PRIMARY KEY,
  uuid TEXT NOT NULL UNIQUE,
  job_uuid TEXT NOT NULL REFERENCES job (uuid) ON DELETE CASCADE,
  added_epoch_ms INTEGER NOT NULL,
  taken_epoch_ms INTEGER,
  file TEXT NOT NULL,
  sha256 TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  fields TEXT NOT NULL,
  thumbnail BLOB
);
CREATE INDEX photograph_of ON photograph (job_uuid, taken_epoch_ms);
INSERT INTO job (uuid, set_name, created_epoch_ms)
  SELECT lower(printf('%s-%s-4%s-8%s-%s', hex(randomblob(4)), hex(randomblob(2)), substr(hex(randomblob(2)), 2),
    substr(hex(randomblob(2)), 2), hex(randomblob(6)))),
    set_name, changed_epoch_ms FROM job_of_schema_2;
INSERT INTO job_entry (uuid, job_uuid, epoch_ms, kind, text, fields)
  SELECT lower(printf('%s-%s-4%s-8%s-%s', hex(randomblob(4)), hex(randomblob(2)), substr(hex(randomblob(2)), 2),
    substr(hex(randomblob(2)), 2), hex(randomblob(6)))),
    j.uuid, o.changed_epoch_ms, 'state', o.note,
    json_patch('{}', json_object('state', o.state, 'waitsFor', o.waits_for))
  FROM job_of_schema_2 AS o JOIN job AS j ON j.set_name = o.set_name;
DROP TABLE job_of_schema_2;
DROP VIEW power_up_readable;
DROP VIEW second_readable;
DROP VIEW alarm_readable;
DROP VIEW trip_readable;
DROP VIEW mark_readable;
CREATE VIEW time_zero AS
  SELECT power_up, number AS event, micros FROM event WHERE kind = 'switch' AND json_extract(fields, '$.state') = 'ON'
  UNION ALL
  SELECT l.power_up, l.number, json_extract(l.fields, '$.look.startMicros') FROM event AS l WHERE l.kind = 'look'
    AND NOT EXISTS (SELECT 1 FROM event AS s WHERE s.power_up = l.power_up AND s.kind = 'switch'
      AND json_extract(s.fields, '$.state') = 'ON');
CREATE VIEW channel_scale AS
  SELECT p.id AS power_up, s.key AS channel,
    json_extract(s.value, '$.zeroBase') / json_extract(s.value, '$.basePerUnit') AS at_zero,
    (json_extract(s.value, '$.fullBase') - json_extract(s.value, '$.zeroBase')) / 1024.0
      / json_extract(s.value, '$.basePerUnit') AS per_count,
    CASE WHEN s.key IN ('I', 'J') THEN 'A' ELSE 'V' END AS unit
  FROM power_up AS p JOIN calibration AS c ON c.id = p.calibration, json_each(c.fields, '$.scales') AS s;
CREATE VIEW power_up_readable AS
  SELECT id AS number, datetime(started_epoch_ms / 1000, 'unixepoch') AS started_utc, set_name, label, outcome, ended,
    probe_kind, stream, state, trial_wire, trial_place, rules_version
  FROM power_up ORDER BY id;
CREATE VIEW second_readable AS
  SELECT s.power_up AS number, s.second AS probe_second,
    (s.second * 1000000 - coalesce(
      (SELECT max(z.micros) FROM time_zero AS z WHERE z.power_up = s.power_up AND z.micros < (s.second + 1) * 1000000),
      (SELECT min(z.micros) FROM time_zero AS z WHERE z.power_up = s.power_up))) / 1e6 AS at_s,
    s.conversions,
    s.i_ua / 1e6 AS supply_a, s.i_ua_lowest / 1e6 AS supply_a_lowest, s.i_ua_highest / 1e6 AS supply_a_highest,
    s.j_ua / 1e6 AS fine_a, s.v_uv / 1e6 AS supply_v, s.v_uv_lowest / 1e6 AS supply_v_lowest,
    s.v_uv_highest / 1e6 AS supply_v_highest,
    CASE WHEN min(abs(s.r1_uv_highest - r1.full_uv), abs(s.r1_uv_lowest - r1.full_uv)) > 2 THEN s.r1_uv / 1e6 END AS rail1_v,
    CASE WHEN min(abs(s.r2_uv_highest - r2.full_uv), abs(s.r2_uv_lowest - r2.full_uv)) > 2 THEN s.r2_uv / 1e6 END AS rail2_v,
    CASE WHEN min(abs(s.r3_uv_highest - r3.full_uv), abs(s.r3_uv_lowest - r3.full_uv)) > 2 THEN s.r3_uv / 1e6 END AS rail3_v,
    s.h_nv / 1e6 AS head_mv, s.h_nv_lowest / 1e6 AS head_mv_lowest, s.h_nv_highest / 1e6 AS head_mv_highest,
    s.m_uv / 1e3 AS meter_mv, s.m_uv_lowest / 1e3 AS meter_mv_lowest, s.m_uv_highest / 1e3 AS meter_mv_highest
  FROM second AS s
    JOIN (SELECT power_up, (at_zero + 1023 * per_count) * 1e6 AS full_uv FROM channel_scale WHERE channel = 'R1') AS r1
      ON r1.power_up = s.power_up
    JOIN (SELECT power_up, (at_zero + 1023 * per_count) * 1e6 AS full_uv FROM channel_scale WHERE channel = 'R2') AS r2
      ON r2.power_up = s.power_up
    JOIN (SELECT power_up, (at_zero + 1023 * per_count) * 1e6 AS full_uv FROM channel_scale WHERE channel = 'R3') AS r3
      ON r3.power_up = s.power_up
  ORDER BY s.power_up, s.place;
CREATE VIEW alarm_readable AS
  SELECT power_up AS number, changed_ms / 1000 AS at_s, rule, rail_name, priority, state, value, limit_value, unit, text
  FROM alarm ORDER BY power_up, transition;
CREATE VIEW trip_scale AS
  SELECT t.power_up, t.event, json_extract(e.fields, '$.trip.cause') AS cause, s.unit, s.per_count,
    CASE json_extract(e.fields, '$.trip.cause') WHEN 'MEAN' THEN 16.0 ELSE 1.0 END AS parts,
    CASE WHEN t.channel IN ('I', 'J', 'V') THEN coalesce(
      (SELECT json_extract(l.fields, '$.look.zero.sixteenths' || t.channel) / 16.0 FROM event AS l
        WHERE l.power_up = t.power_up AND l.kind = 'look' AND l.number < t.event ORDER BY l.number DESC LIMIT 1), 0)
      ELSE -s.at_zero / s.per_count END AS zero_counts
  FROM trip AS t JOIN event AS e ON e.power_up = t.power_up AND e.number = t.event
    JOIN channel_scale AS s ON s.power_up = t.power_up AND s.channel = t.channel
  WHERE json_extract(e.fields, '$.trip.cause') IN ('INRUSH', 'RUNNING', 'MEAN', 'PEAK', 'OVER_VOLTAGE');
CREATE VIEW trip_readable AS
  SELECT t.power_up AS number,
    (t.opened_us - coalesce(
      (SELECT max(z.micros) FROM time_zero AS z WHERE z.power_up = t.power_up AND z.event < t.event),
      (SELECT min(z.micros) FROM time_zero AS z WHERE z.power_up = t.power_up))) / 1e6 AS at_s,
    t.cause, t.channel, (t.opened_us - t.crossed_us) / 1e3 AS took_ms,
    CASE t.cause WHEN 'i2t' THEN json_extract(e.fields, '$.trip.i2tSum') * i.per_count * i.per_count / 4000
      WHEN 'hard-short' THEN json_extract(p.hello, '$.hardShortA')
      WHEN 'host-silence' THEN (t.opened_us - t.crossed_us) / 1e3
      ELSE x.per_count * (t.value_counts / x.parts - x.zero_counts) END AS value,
    CASE t.cause WHEN 'i2t' THEN json_extract(e.fields, '$.trip.i2tLimit') * i.per_count * i.per_count / 4000
      WHEN 'hard-short' THEN json_extract(p.hello, '$.hardShortA')
      ELSE x.per_count * (t.limit_counts / x.parts - x.zero_counts) END AS limit_value,
    CASE t.cause WHEN 'i2t' THEN 'A2s' WHEN 'hard-short' THEN 'A' WHEN 'host-silence' THEN 'ms' ELSE x.unit END AS unit
  FROM trip AS t JOIN power_up AS p ON p.id = t.power_up
    JOIN event AS e ON e.power_up = t.power_up AND e.number = t.event
    LEFT JOIN trip_scale AS x ON x.power_up = t.power_up AND x.event = t.event
    LEFT JOIN channel_scale AS i ON i.power_up = t.power_up AND i.channel = 'I'
  ORDER BY t.power_up, t.event;
CREATE VIEW mark_readable AS
  SELECT m.power_up AS number,
    (m.micros - coalesce(
      (SELECT max(z.micros) FROM time_zero AS z WHERE z.power_up = m.power_up AND z.event < m.event),
      (SELECT min(z.micros) FROM time_zero AS z WHERE z.power_up = m.power_up))) / 1e6 AS at_s, m.text
  FROM mark AS m ORDER BY m.power_up, m.event;
CREATE VIEW event_readable AS
  SELECT e.power_up AS number,
    (e.micros - coalesce(
      (SELECT max(z.micros) FROM time_zero AS z WHERE z.power_up = e.power_up AND z.event <= e.number),
      (SELECT min(z.micros) FROM time_zero AS z WHERE z.power_up = e.power_up))) / 1e6 AS at_s, e.kind, e.fields
  FROM event AS e ORDER BY e.power_up, e.number;
CREATE VIEW finding_readable AS
  SELECT power_up AS number, from_ms / 1000 AS from_s, to_ms / 1000 AS to_s, finding, severity, rail, caused_by, text
  FROM finding ORDER BY power_up, number;
CREATE VIEW job_readable AS
  SELECT j.set_name, json_extract(e.fields, '$.state') AS state, json_extract(e.fields, '$.waitsFor') AS waits_for,
    datetime(e.epoch_ms / 1000, 'unixepoch') AS since_utc
  FROM job AS j LEFT JOIN job_entry AS e ON e.id = (SELECT l.id FROM job_entry AS l WHERE l.job_uuid = j.uuid
    AND l.kind = 'state' ORDER BY l.epoch_ms DESC, l.id DESC LIMIT 1)
  ORDER BY j.set_name;
