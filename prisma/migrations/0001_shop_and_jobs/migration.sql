-- The whole job in one schema. A table marked "append only" is never updated or deleted by the service: prisma/grants.sql
-- withholds the privileges, and a test reads them back from the catalogue. Lengths are int8 nanometres.

-- The shop and its people ---------------------------------------------------------------------------------------------

CREATE TABLE shop (
  id              smallint PRIMARY KEY DEFAULT 1 CONSTRAINT shop_is_one_row CHECK (id = 1),
  name            text NOT NULL CONSTRAINT shop_name_length CHECK (length(name) BETWEEN 1 AND 120),
  time_zone       text NOT NULL,
  unit            text NOT NULL CONSTRAINT shop_unit_known CHECK (unit IN ('inch', 'millimetre')),
  coverage_factor double precision NOT NULL DEFAULT 2 CONSTRAINT shop_coverage_positive CHECK (coverage_factor > 0),
  is_demo         boolean NOT NULL DEFAULT false,
  -- Drawn anew by a restore: an event stream that knows another generation starts over.
  generation      uuid NOT NULL DEFAULT gen_random_uuid(),
  created_at      timestamptz NOT NULL DEFAULT now()
);

CREATE TABLE setup_link (
  secret_hash text PRIMARY KEY,
  expires_at  timestamptz NOT NULL,
  used_at     timestamptz
);

CREATE TABLE person (
  id            uuid PRIMARY KEY,
  name          text NOT NULL CONSTRAINT person_name_length CHECK (length(name) BETWEEN 1 AND 120),
  sign_in_name  text NOT NULL,
  password_hash text NOT NULL,
  pin_hash      text,
  active        boolean NOT NULL DEFAULT true,
  created_at    timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT person_sign_in_name_lower CHECK (sign_in_name = lower(sign_in_name)),
  CONSTRAINT person_sign_in_name_unique UNIQUE (sign_in_name)
);

CREATE TABLE person_role (
  person_id uuid NOT NULL REFERENCES person (id),
  role      text NOT NULL CONSTRAINT person_role_known CHECK (role IN ('counter', 'machinist', 'owner')),
  PRIMARY KEY (person_id, role)
);

CREATE TABLE bench (
  id   uuid PRIMARY KEY,
  name text NOT NULL CONSTRAINT bench_name_unique UNIQUE,
  kind text NOT NULL
);
CREATE INDEX bench_by_kind ON bench (kind);

-- A tablet bolted to a bench: signed in as itself, taken over by people with a PIN.
CREATE TABLE device (
  id          uuid PRIMARY KEY,
  name        text NOT NULL CONSTRAINT device_name_unique UNIQUE,
  bench_id    uuid REFERENCES bench (id),
  secret_hash text NOT NULL CONSTRAINT device_secret_unique UNIQUE,
  created_at  timestamptz NOT NULL DEFAULT now(),
  revoked_at  timestamptz
);
CREATE INDEX device_by_bench ON device (bench_id);

-- Only a hash of the session's id: a stolen table opens nothing.
CREATE TABLE session (
  id_hash    text PRIMARY KEY,
  person_id  uuid NOT NULL REFERENCES person (id),
  device_id  uuid REFERENCES device (id),
  expires_at timestamptz NOT NULL,
  created_at timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX session_by_person ON session (person_id);
CREATE INDEX session_by_device ON session (device_id);

-- Wrong PINs of one person on one device (a browser without a device counts as 'browser').
CREATE TABLE pin_lock (
  person_id    uuid NOT NULL REFERENCES person (id),
  device       text NOT NULL,
  failures     integer NOT NULL CONSTRAINT pin_lock_failures_counted CHECK (failures >= 0),
  locked_until timestamptz,
  PRIMARY KEY (person_id, device)
);

CREATE TABLE gauge (
  id                   uuid PRIMARY KEY,
  mark                 text NOT NULL CONSTRAINT gauge_mark_unique UNIQUE,
  name                 text NOT NULL,
  kind                 text NOT NULL,
  quantity             text NOT NULL,
  -- Base unit of the quantity (nanometres for a length); a division of an analogue dial or the last digit of a display.
  resolution           bigint NOT NULL CONSTRAINT gauge_resolution_positive CHECK (resolution > 0),
  analogue             boolean NOT NULL,
  clockwise_is_smaller boolean NOT NULL DEFAULT false,
  standard_uncertainty double precision NOT NULL CONSTRAINT gauge_uncertainty_positive CHECK (standard_uncertainty > 0),
  calibrated_until     date NOT NULL,
  retired              boolean NOT NULL DEFAULT false
);

-- Append only: the shop's own numbers for a fit, a revision at a time.
CREATE TABLE rule_revision (
  fit        text NOT NULL,
  revision   integer NOT NULL CONSTRAINT rule_revision_from_one CHECK (revision >= 1),
  parameters jsonb NOT NULL,
  source     text NOT NULL,
  made_by    uuid NOT NULL REFERENCES person (id),
  made_at    timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (fit, revision)
);

-- Customers, engines, jobs --------------------------------------------------------------------------------------------

-- Personal data lives here alone, in a table that can be corrected and erased; seals and events hold ids.
CREATE TABLE customer (
  id           uuid PRIMARY KEY,
  name         text NOT NULL CONSTRAINT customer_name_length CHECK (length(name) BETWEEN 1 AND 120),
  phone        text NOT NULL DEFAULT '',
  phone_digits text GENERATED ALWAYS AS (regexp_replace(phone, '\D', '', 'g')) STORED,
  email        text NOT NULL DEFAULT '',
  created_at   timestamptz NOT NULL DEFAULT now(),
  version      integer NOT NULL DEFAULT 1
);

-- The shop's library: an engine and the parts it usually gets.
CREATE TABLE engine_model (
  id            uuid PRIMARY KEY,
  name          text NOT NULL CONSTRAINT engine_model_name_unique UNIQUE,
  specification jsonb NOT NULL,
  parts         jsonb NOT NULL,
  created_at    timestamptz NOT NULL DEFAULT now()
);

CREATE TABLE engine (
  id            uuid PRIMARY KEY,
  customer_id   uuid NOT NULL REFERENCES customer (id),
  model_id      uuid REFERENCES engine_model (id),
  name          text NOT NULL,
  serial        text NOT NULL DEFAULT '',
  created_at    timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX engine_by_customer ON engine (customer_id);
CREATE INDEX engine_by_model ON engine (model_id);

CREATE SEQUENCE job_number_sequence START 1001;

CREATE TABLE job (
  id             uuid PRIMARY KEY,
  number         integer NOT NULL DEFAULT nextval('job_number_sequence') CONSTRAINT job_number_unique UNIQUE,
  customer_id    uuid NOT NULL REFERENCES customer (id),
  engine_id      uuid NOT NULL REFERENCES engine (id),
  duty           text NOT NULL,
  work           text NOT NULL,
  wanted         text NOT NULL DEFAULT '',
  notes          text NOT NULL DEFAULT '',
  promised_on    date NOT NULL,
  state          text NOT NULL DEFAULT 'open' CONSTRAINT job_state_known CHECK (state IN ('open', 'handed-over')),
  plan_revision  integer NOT NULL DEFAULT 0,
  -- Count and head of the job's chain of seals: a cut tail shows.
  seal_count     integer NOT NULL DEFAULT 0,
  seal_head      text NOT NULL DEFAULT '',
  version        integer NOT NULL DEFAULT 1,
  opened_by      uuid NOT NULL REFERENCES person (id),
  opened_at      timestamptz NOT NULL DEFAULT now(),
  handed_over_at timestamptz
);
CREATE INDEX job_by_customer ON job (customer_id);
CREATE INDEX job_by_engine ON job (engine_id);
CREATE INDEX job_by_state_and_promise ON job (state, promised_on);

CREATE TABLE intake_item (
  id          uuid PRIMARY KEY,
  job_id      uuid NOT NULL REFERENCES job (id),
  description text NOT NULL CONSTRAINT intake_item_described CHECK (length(description) BETWEEN 1 AND 300),
  quantity    integer NOT NULL DEFAULT 1 CONSTRAINT intake_item_quantity_positive CHECK (quantity > 0),
  condition   text NOT NULL DEFAULT '',
  owned_by    text NOT NULL CONSTRAINT intake_item_owner_known CHECK (owned_by IN ('customer', 'shop')),
  received_by uuid NOT NULL REFERENCES person (id),
  received_at timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX intake_item_by_job ON intake_item (job_id);

CREATE TABLE part (
  id          uuid PRIMARY KEY,
  job_id      uuid NOT NULL REFERENCES job (id),
  kind        text NOT NULL,
  mark        text NOT NULL,
  description text NOT NULL DEFAULT '',
  lot         text NOT NULL DEFAULT '',
  owned_by    text NOT NULL DEFAULT 'customer' CONSTRAINT part_owner_known CHECK (owned_by IN ('customer', 'shop')),
  added_at    timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT part_mark_unique UNIQUE (job_id, mark)
);

-- Append only: where a part sits from now on. Its latest row counts, and the latest row of the place.
CREATE TABLE placement (
  id        uuid PRIMARY KEY,
  ordinal   bigint GENERATED ALWAYS AS IDENTITY,
  job_id    uuid NOT NULL REFERENCES job (id),
  part_id   uuid NOT NULL REFERENCES part (id),
  place     text,
  -- Why it was put there; empty for the place that a part was made for.
  reason    text NOT NULL DEFAULT '',
  placed_by uuid NOT NULL REFERENCES person (id),
  placed_at timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX placement_by_job ON placement (job_id, ordinal);
CREATE INDEX placement_by_part ON placement (part_id, ordinal);

-- Append only: fit sheet and route, in full, as the exact text whose hash is sealed.
CREATE TABLE plan_revision (
  job_id    uuid NOT NULL REFERENCES job (id),
  revision  integer NOT NULL CONSTRAINT plan_revision_from_one CHECK (revision >= 1),
  plan      text NOT NULL,
  reason    text NOT NULL,
  made_by   uuid NOT NULL REFERENCES person (id),
  made_at   timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (job_id, revision)
);

-- A cache for lists: written from judge() in the transaction that changed what it counts; `npm run verify` recomputes it.
CREATE TABLE operation_state (
  job_id          uuid NOT NULL REFERENCES job (id),
  operation_key   text NOT NULL,
  ordinal         integer NOT NULL,
  title           text NOT NULL,
  stage           text NOT NULL,
  bench_kind      text NOT NULL,
  minutes         integer NOT NULL CONSTRAINT operation_minutes_positive CHECK (minutes > 0),
  definition_hash text NOT NULL,
  within          integer NOT NULL,
  not_proven      integer NOT NULL,
  outside         integer NOT NULL,
  not_measured    integer NOT NULL,
  conceded        integer NOT NULL,
  to_see          integer NOT NULL,
  seen            integer NOT NULL,
  open_findings   integer NOT NULL,
  -- Every operation before it is signed.
  reachable       boolean NOT NULL,
  state           text NOT NULL CONSTRAINT operation_state_known
                  CHECK (state IN ('waiting', 'ready', 'under-way', 'signed', 're-opened')),
  PRIMARY KEY (job_id, operation_key)
);
CREATE INDEX operation_state_by_bench ON operation_state (bench_kind, state);

-- What is measured and seen -------------------------------------------------------------------------------------------

-- Append only: one measuring of one feature of one part, with one gauge in one state.
CREATE TABLE pass (
  id                   uuid PRIMARY KEY,
  job_id               uuid NOT NULL REFERENCES job (id),
  part_id              uuid NOT NULL REFERENCES part (id),
  feature              text NOT NULL,
  number               integer NOT NULL CONSTRAINT pass_from_one CHECK (number >= 1),
  operation_key        text NOT NULL,
  gauge_id             uuid NOT NULL REFERENCES gauge (id),
  standard_uncertainty double precision NOT NULL CONSTRAINT pass_uncertainty_positive CHECK (standard_uncertainty > 0),
  state                text[] NOT NULL DEFAULT '{}',
  set_on_part_id       uuid REFERENCES part (id),
  set_on_feature       text,
  person_id            uuid NOT NULL REFERENCES person (id),
  device_id            uuid REFERENCES device (id),
  opened_at            timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT pass_number_unique UNIQUE (part_id, feature, number),
  CONSTRAINT pass_set_on_whole CHECK ((set_on_part_id IS NULL) = (set_on_feature IS NULL))
);
CREATE INDEX pass_by_job ON pass (job_id);
CREATE INDEX pass_by_gauge ON pass (gauge_id);
CREATE INDEX pass_by_set_on_part ON pass (set_on_part_id);

-- Append only: a correction names the reading it supersedes, so each point is one unbranched chain whose end counts.
CREATE TABLE reading (
  id         uuid PRIMARY KEY,
  pass_id    uuid NOT NULL REFERENCES pass (id),
  point      text NOT NULL,
  value      bigint NOT NULL,
  typed      text NOT NULL CONSTRAINT reading_typed_length CHECK (length(typed) BETWEEN 1 AND 40),
  supersedes uuid,
  reason     text,
  person_id  uuid NOT NULL REFERENCES person (id),
  device_at  timestamptz,
  taken_at   timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT reading_chain_unbranched UNIQUE NULLS NOT DISTINCT (pass_id, point, supersedes),
  CONSTRAINT reading_in_its_chain UNIQUE (id, pass_id, point),
  CONSTRAINT reading_supersedes_same_point FOREIGN KEY (supersedes, pass_id, point) REFERENCES reading (id, pass_id, point),
  CONSTRAINT reading_correction_has_reason CHECK ((supersedes IS NULL) = (reason IS NULL)),
  CONSTRAINT reading_supersedes_another CHECK (supersedes <> id)
);
CREATE INDEX reading_by_superseded ON reading (supersedes, pass_id, point);

-- Append only: a thing seen, not seen, or not applicable; the latest of an item counts.
CREATE TABLE observation (
  id            uuid PRIMARY KEY,
  ordinal       bigint GENERATED ALWAYS AS IDENTITY,
  job_id        uuid NOT NULL REFERENCES job (id),
  operation_key text NOT NULL,
  item          text NOT NULL,
  outcome       text NOT NULL CONSTRAINT observation_outcome_known CHECK (outcome IN ('seen', 'not-seen', 'not-applicable')),
  note          text NOT NULL DEFAULT '',
  person_id     uuid NOT NULL REFERENCES person (id),
  observed_at   timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX observation_by_operation ON observation (job_id, operation_key, item, ordinal);

CREATE TABLE work_time (
  id            uuid PRIMARY KEY,
  job_id        uuid NOT NULL REFERENCES job (id),
  operation_key text NOT NULL,
  person_id     uuid NOT NULL REFERENCES person (id),
  started_at    timestamptz NOT NULL DEFAULT now(),
  stopped_at    timestamptz,
  CONSTRAINT work_time_runs_forward CHECK (stopped_at IS NULL OR stopped_at >= started_at)
);
CREATE UNIQUE INDEX work_time_one_running ON work_time (person_id) WHERE stopped_at IS NULL;
CREATE INDEX work_time_by_operation ON work_time (job_id, operation_key);

-- Findings and what the owner decided ---------------------------------------------------------------------------------

CREATE TABLE finding (
  id              uuid PRIMARY KEY,
  job_id          uuid NOT NULL REFERENCES job (id),
  operation_key   text,
  requirement_key text,
  place           text,
  source          text NOT NULL CONSTRAINT finding_source_known CHECK (source IN ('plan', 'judge', 'person')),
  -- Stable within the job, so that re-planning meets the finding it already knows.
  finding_key     text NOT NULL,
  title           text NOT NULL,
  sentence        text NOT NULL,
  stops           boolean NOT NULL,
  state           text NOT NULL DEFAULT 'open' CONSTRAINT finding_state_known CHECK (state IN ('open', 'decided', 'withdrawn')),
  raised_by       uuid REFERENCES person (id),
  raised_at       timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX finding_by_job ON finding (job_id, state);
CREATE UNIQUE INDEX finding_open_once ON finding (job_id, finding_key) WHERE state = 'open';

-- Append only: a concession covers a requirement, its place and an interval of values.
CREATE TABLE finding_decision (
  finding_id      uuid PRIMARY KEY REFERENCES finding (id),
  job_id          uuid NOT NULL REFERENCES job (id),
  decision        text NOT NULL CONSTRAINT finding_decision_known CHECK (decision IN ('concession', 'rework', 'replace', 'scrap')),
  reason          text NOT NULL CONSTRAINT finding_decision_reasoned CHECK (length(reason) BETWEEN 3 AND 2000),
  requirement_key text,
  low             bigint,
  high            bigint,
  decided_by      uuid NOT NULL REFERENCES person (id),
  decided_at      timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT finding_decision_interval_ordered CHECK (low <= high)
);
CREATE INDEX finding_decision_by_job ON finding_decision (job_id);

-- Seals ---------------------------------------------------------------------------------------------------------------

-- Append only: each seal's hash covers the one before it and its own payload's exact bytes. No fork: (job, previous) is unique.
CREATE TABLE seal (
  job_id    uuid NOT NULL REFERENCES job (id),
  number    integer NOT NULL CONSTRAINT seal_from_one CHECK (number >= 1),
  kind      text NOT NULL CONSTRAINT seal_kind_known
            CHECK (kind IN ('plan', 'sign-off', 'concession', 're-opening', 'handover')),
  payload   text NOT NULL,
  previous  text NOT NULL,
  hash      text NOT NULL,
  sealed_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (job_id, number),
  CONSTRAINT seal_never_forks UNIQUE (job_id, previous)
);

-- Append only.
CREATE TABLE sign_off (
  id              uuid PRIMARY KEY,
  job_id          uuid NOT NULL,
  seal_number     integer NOT NULL,
  operation_key   text NOT NULL,
  definition_hash text NOT NULL,
  plan_revision   integer NOT NULL,
  signed_at       timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT sign_off_has_seal FOREIGN KEY (job_id, seal_number) REFERENCES seal (job_id, number),
  CONSTRAINT sign_off_under_plan FOREIGN KEY (job_id, plan_revision) REFERENCES plan_revision (job_id, revision),
  CONSTRAINT sign_off_one_per_seal UNIQUE (job_id, seal_number)
);
CREATE INDEX sign_off_by_operation ON sign_off (job_id, operation_key);

-- Append only: who signed; two different people where the operation asks for two.
CREATE TABLE signature (
  sign_off_id uuid NOT NULL REFERENCES sign_off (id),
  person_id   uuid NOT NULL REFERENCES person (id),
  PRIMARY KEY (sign_off_id, person_id)
);

-- Append only: the readings a sign-off relied on, those of the mating parts included.
CREATE TABLE sign_off_reading (
  sign_off_id uuid NOT NULL REFERENCES sign_off (id),
  reading_id  uuid NOT NULL REFERENCES reading (id),
  PRIMARY KEY (sign_off_id, reading_id)
);
CREATE INDEX sign_off_reading_by_reading ON sign_off_reading (reading_id);

-- Append only: a sign-off that no longer counts, and why.
CREATE TABLE re_opening (
  sign_off_id uuid PRIMARY KEY REFERENCES sign_off (id),
  job_id      uuid NOT NULL,
  seal_number integer NOT NULL,
  cause       text NOT NULL CONSTRAINT re_opening_cause_known
              CHECK (cause IN ('correction', 'new-pass', 'moved-part', 'plan', 'observation', 'owner')),
  reason      text NOT NULL,
  person_id   uuid NOT NULL REFERENCES person (id),
  re_opened_at timestamptz NOT NULL DEFAULT now(),
  CONSTRAINT re_opening_has_seal FOREIGN KEY (job_id, seal_number) REFERENCES seal (job_id, number)
);
CREATE INDEX re_opening_by_job ON re_opening (job_id);

-- What the customer sees ----------------------------------------------------------------------------------------------

-- The token on the link is an HMAC of the secret under a key in the data folder: a stolen table opens nothing.
CREATE TABLE status_link (
  id         uuid PRIMARY KEY,
  job_id     uuid NOT NULL REFERENCES job (id),
  secret     bytea NOT NULL CONSTRAINT status_link_secret_unique UNIQUE CHECK (octet_length(secret) = 16),
  token_hash text NOT NULL CONSTRAINT status_link_token_unique UNIQUE,
  made_by    uuid NOT NULL REFERENCES person (id),
  made_at    timestamptz NOT NULL DEFAULT now(),
  expires_at timestamptz NOT NULL,
  revoked_at timestamptz
);
CREATE INDEX status_link_by_job ON status_link (job_id);

CREATE TABLE customer_note (
  id           uuid PRIMARY KEY,
  job_id       uuid NOT NULL REFERENCES job (id),
  text         text NOT NULL CONSTRAINT customer_note_length CHECK (length(text) BETWEEN 1 AND 2000),
  written_by   uuid NOT NULL REFERENCES person (id),
  written_at   timestamptz NOT NULL DEFAULT now(),
  withdrawn_at timestamptz
);
CREATE INDEX customer_note_by_job ON customer_note (job_id);

-- Commands and events -------------------------------------------------------------------------------------------------

-- One row per mutation that succeeded: the same key again is answered from here.
CREATE TABLE command_answer (
  key         uuid PRIMARY KEY,
  principal   text NOT NULL,
  route       text NOT NULL,
  body_hash   text NOT NULL,
  status      integer,
  body        text,
  answered_at timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX command_answer_by_age ON command_answer (answered_at);

-- Append only. An event says *look again* and carries no data.
CREATE TABLE event (
  id            bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY,
  xid           xid8 NOT NULL DEFAULT pg_current_xact_id(),
  kind          text NOT NULL,
  job_id        uuid,
  operation_key text,
  person_id     uuid,
  at            timestamptz NOT NULL DEFAULT now()
);
CREATE INDEX event_in_commit_order ON event (xid, id);
