-- A bench device begins with a one-time code that the owner reads out; the tablet that types it gets a secret of its own.
-- Of either only a hash is kept. A revoked device gives its name free.
ALTER TABLE device
  ALTER COLUMN secret_hash DROP NOT NULL,
  DROP CONSTRAINT device_name_unique,
  ADD COLUMN code_hash text CONSTRAINT device_code_unique UNIQUE,
  ADD COLUMN code_expires_at timestamptz,
  ADD CONSTRAINT device_code_lapses CHECK ((code_hash IS NULL) = (code_expires_at IS NULL));
CREATE UNIQUE INDEX device_name_unique ON device (name) WHERE revoked_at IS NULL;

-- Where it was typed and where it was signed; null for a browser that is no bench device.
ALTER TABLE reading ADD COLUMN device_id uuid REFERENCES device (id);
ALTER TABLE sign_off ADD COLUMN device_id uuid REFERENCES device (id);

-- Append only: who signed has read that their signature was re-opened.
CREATE TABLE re_opening_seen (
  sign_off_id uuid NOT NULL REFERENCES re_opening (sign_off_id),
  person_id   uuid NOT NULL REFERENCES person (id),
  seen_at     timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (sign_off_id, person_id)
);
CREATE INDEX signature_by_person ON signature (person_id);
