-- Work that is done without a network and arrives later: signatures that wait for their person's PIN, and the clock.

-- A step marked as signed on a device without a network. It is no signature: nothing depends on it until each of its
-- signers has confirmed it with a PIN and a sign-off with this id is sealed.
-- Append only.
CREATE TABLE pending_sign_off (
  id              uuid PRIMARY KEY,
  job_id          uuid NOT NULL REFERENCES job (id),
  operation_key   text NOT NULL,
  -- What the bench saw: the step as it was planned, and the readings that counted.
  definition_hash text NOT NULL,
  readings        uuid[] NOT NULL,
  -- Who was signed in, and everybody whose signature it wants, that person first.
  person_id       uuid NOT NULL REFERENCES person (id),
  signers         uuid[] NOT NULL CONSTRAINT pending_sign_off_signers CHECK (cardinality(signers) BETWEEN 1 AND 2),
  device_id       uuid REFERENCES device (id),
  -- The device's own time, and how far the server's clock was ahead of it at their last contact, in milliseconds.
  device_at       timestamptz NOT NULL,
  device_offset   integer,
  received_at     timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX pending_sign_off_by_operation ON pending_sign_off (job_id, operation_key);
CREATE INDEX pending_sign_off_by_signer ON pending_sign_off USING gin (signers);

-- Append only. A signer's PIN was right.
CREATE TABLE pending_confirmation (
  pending_sign_off_id uuid NOT NULL REFERENCES pending_sign_off (id),
  person_id           uuid NOT NULL REFERENCES person (id),
  confirmed_at        timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (pending_sign_off_id, person_id)
);

-- Append only. Why it did not become a seal: what it relied on no longer holds, or somebody put it away.
CREATE TABLE pending_end (
  pending_sign_off_id uuid NOT NULL REFERENCES pending_sign_off (id),
  kind                text NOT NULL CONSTRAINT pending_end_kind_known CHECK (kind IN ('sign-again', 'put-away')),
  reason              text NOT NULL,
  person_id           uuid NOT NULL REFERENCES person (id),
  ended_at            timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (pending_sign_off_id, kind)
);

-- Each touch on a clock, so that a repeat has no second effect however late it comes; work_time is what follows from them.
-- Append only.
CREATE TABLE clock_turn (
  id            uuid PRIMARY KEY,
  job_id        uuid NOT NULL REFERENCES job (id),
  operation_key text NOT NULL,
  person_id     uuid NOT NULL REFERENCES person (id),
  action        text NOT NULL CONSTRAINT clock_turn_action_known CHECK (action IN ('start', 'stop')),
  device_at     timestamptz,
  device_offset integer,
  -- When it counts as turned, by the server's clock.
  turned_at     timestamptz NOT NULL,
  received_at   timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX clock_turn_by_job ON clock_turn (job_id);

ALTER TABLE observation ADD COLUMN device_at timestamptz;
