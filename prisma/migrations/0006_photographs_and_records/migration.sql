-- Photographs, results of crack and pressure tests, since when a part stood beside its gauge, lots and serials.

-- Since when part and gauge have stood side by side, where a thing to see asks for it.
ALTER TABLE observation ADD COLUMN since timestamptz;

-- Append only: what a test of one area of a part showed; the latest of an area counts, for the part that was tested.
CREATE TABLE inspection (
  id            uuid PRIMARY KEY,
  ordinal       bigint GENERATED ALWAYS AS IDENTITY,
  job_id        uuid NOT NULL REFERENCES job (id),
  operation_key text NOT NULL,
  item          text NOT NULL,
  part_id       uuid REFERENCES part (id),
  method        text NOT NULL CONSTRAINT inspection_method_known
                CHECK (method IN ('magnetic-particle', 'dye-penetrant', 'ultrasonic', 'eddy-current', 'pressure')),
  -- Test pressure in pascals.
  pressure      bigint CONSTRAINT inspection_pressure_positive CHECK (pressure > 0),
  result        text NOT NULL CONSTRAINT inspection_result_known
                CHECK (result IN ('no-indication', 'indication', 'not-tested')),
  note          text NOT NULL DEFAULT '',
  inspector_id  uuid NOT NULL REFERENCES person (id),
  person_id     uuid NOT NULL REFERENCES person (id),
  inspected_at  timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT inspection_under_pressure CHECK (result = 'not-tested' OR (method = 'pressure') = (pressure IS NOT NULL))
);
CREATE INDEX inspection_by_operation ON inspection (job_id, operation_key, item, ordinal);

-- Append only: lot or serial of a part; the latest counts, and part.lot repeats it for lists.
CREATE TABLE part_lot (
  id        uuid PRIMARY KEY,
  ordinal   bigint GENERATED ALWAYS AS IDENTITY,
  job_id    uuid NOT NULL REFERENCES job (id),
  part_id   uuid NOT NULL REFERENCES part (id),
  lot       text NOT NULL CONSTRAINT part_lot_length CHECK (length(lot) BETWEEN 1 AND 80),
  reason    text NOT NULL DEFAULT '',
  person_id uuid NOT NULL REFERENCES person (id),
  typed_at  timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX part_lot_by_part ON part_lot (part_id, ordinal);
CREATE INDEX part_lot_by_job ON part_lot (job_id);
-- A recall asks by lot, whatever its capitals.
CREATE INDEX part_lot_by_lot ON part_lot (lower(lot) text_pattern_ops);

INSERT INTO part_lot (id, job_id, part_id, lot, person_id, typed_at)
SELECT gen_random_uuid(), part.job_id, part.id, left(part.lot, 80), job.opened_by, part.added_at
  FROM part JOIN job ON job.id = part.job_id
 WHERE part.lot <> '';

-- Append only: bytes and what they show. They lie in the database so that every process and every backup has them.
CREATE TABLE photograph (
  id            uuid PRIMARY KEY,
  job_id        uuid NOT NULL REFERENCES job (id),
  operation_key text,
  -- What it belongs to, and which one: a finding or a line of the intake list by its id, a thing to see or an area
  -- that is tested by its key within the step.
  subject       text NOT NULL CONSTRAINT photograph_subject_known
                CHECK (subject IN ('finding', 'observation', 'inspection', 'intake-item')),
  subject_key   text NOT NULL,
  caption       text NOT NULL CONSTRAINT photograph_caption_length CHECK (length(caption) BETWEEN 1 AND 300),
  sha256        text NOT NULL,
  media_type    text NOT NULL CONSTRAINT photograph_media_type_known CHECK (media_type IN ('image/jpeg', 'image/webp')),
  bytes         bytea NOT NULL CONSTRAINT photograph_bytes_limit CHECK (octet_length(bytes) BETWEEN 1 AND 1572864),
  person_id     uuid NOT NULL REFERENCES person (id),
  taken_at      timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT photograph_of_a_step CHECK (operation_key IS NOT NULL OR subject IN ('finding', 'intake-item'))
);
CREATE INDEX photograph_by_job ON photograph (job_id, operation_key);
CREATE INDEX photograph_by_subject ON photograph (subject, subject_key);
