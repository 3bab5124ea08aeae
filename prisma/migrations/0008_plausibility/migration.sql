-- Append only: the shop's own numbers for doubting a typed value; a revision says all that differ from the starter's.
CREATE TABLE plausibility_revision (
  revision integer PRIMARY KEY CONSTRAINT plausibility_revision_from_one CHECK (revision >= 1),
  numbers  jsonb NOT NULL,
  reason   text NOT NULL CONSTRAINT plausibility_revision_has_reason CHECK (length(reason) BETWEEN 1 AND 300),
  made_by  uuid NOT NULL REFERENCES person (id),
  made_at  timestamptz NOT NULL DEFAULT now()
);

-- What spoke against a value when it was taken, in words, and by which revision of the numbers: 0 for the starter's.
ALTER TABLE reading
  ADD COLUMN doubt text,
  ADD COLUMN doubted_by integer CONSTRAINT reading_doubted_by_known CHECK (doubted_by >= 0),
  ADD CONSTRAINT reading_doubt_whole CHECK ((doubt IS NULL) = (doubted_by IS NULL));
