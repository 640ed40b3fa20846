-- Brings a bench log from schema 1 to schema 2: two more views and an index, no table changes.
CREATE INDEX power_up_of_set ON power_up (set_name, started_epoch_ms);
CREATE VIEW trip_readable AS
  SELECT power_up AS number, opened_us / 1e6 AS at_s, cause, channel, (opened_us - crossed_us) / 1e3 AS took_ms,
    value_counts, limit_counts
  FROM trip ORDER BY power_up, event;
CREATE VIEW mark_readable AS
  SELECT power_up AS number, micros / 1e6 AS at_s, text
  FROM mark ORDER BY power_up, event;
