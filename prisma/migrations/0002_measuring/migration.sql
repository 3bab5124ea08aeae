-- How a value was measured: what a comparator was set on, how warm part and gauge were, which blade no longer entered, what
-- was said of an unlikely value; and whether the gauge still read zero at the end.

-- The size that a comparator was set to zero on, in nanometres, and how warm that was, in thousandths of a °C.
ALTER TABLE pass
  ADD COLUMN setting_size        bigint,
  ADD COLUMN setting_temperature integer,
  ADD COLUMN part_temperature    integer,
  ADD COLUMN room_temperature    integer,
  -- What the part was taken to be made of, so that its readings are corrected to 20 °C; null where they are taken as read.
  ADD COLUMN material            text,
  ADD CONSTRAINT pass_setting_whole CHECK (setting_temperature IS NULL OR setting_size IS NOT NULL),
  ADD CONSTRAINT pass_temperatures_whole CHECK ((part_temperature IS NULL) = (room_temperature IS NULL)),
  ADD CONSTRAINT pass_corrected_by_temperature CHECK (material IS NULL OR part_temperature IS NOT NULL);

ALTER TABLE reading
  -- Read with feelers: the value is the blade that entered, and this the one that did not; null where none was tried.
  ADD COLUMN by_blades boolean NOT NULL DEFAULT false,
  ADD COLUMN stops     bigint,
  -- Whoever typed it looked at an unlikely value and stood by it, with a note where it was beyond belief.
  ADD COLUMN confirmed boolean NOT NULL DEFAULT false,
  ADD COLUMN note      text,
  ADD CONSTRAINT reading_stops_a_blade CHECK (stops IS NULL OR (by_blades AND stops > value));

-- Append only: what a gauge showed on what it was set on, after it was read.
CREATE TABLE zero_check (
  id         uuid PRIMARY KEY,
  job_id     uuid NOT NULL REFERENCES job (id),
  gauge_id   uuid NOT NULL REFERENCES gauge (id),
  -- Nanometres off zero, as typed, and how far off it might have been.
  deviation  bigint NOT NULL,
  typed      text NOT NULL CONSTRAINT zero_check_typed_length CHECK (length(typed) BETWEEN 1 AND 40),
  allowed    bigint NOT NULL CONSTRAINT zero_check_allowed_positive CHECK (allowed > 0),
  person_id  uuid NOT NULL REFERENCES person (id),
  device_id  uuid REFERENCES device (id),
  checked_at timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX zero_check_by_job_and_gauge ON zero_check (job_id, gauge_id, checked_at);
CREATE INDEX zero_check_by_gauge ON zero_check (gauge_id);

-- Append only: the passes that a zero check speaks of, all that was read on the gauge since its last good zero.
CREATE TABLE zero_check_pass (
  zero_check_id uuid NOT NULL REFERENCES zero_check (id),
  pass_id       uuid NOT NULL REFERENCES pass (id),
  PRIMARY KEY (zero_check_id, pass_id)
);
CREATE INDEX zero_check_pass_by_pass ON zero_check_pass (pass_id);

ALTER TABLE re_opening
  DROP CONSTRAINT re_opening_cause_known,
  ADD CONSTRAINT re_opening_cause_known
  CHECK (cause IN ('correction', 'new-pass', 'moved-part', 'plan', 'observation', 'owner', 'zero-drift'));

