-- What the service login may do. The owner login runs this after each migration; :schema and :service are replaced by
-- quoted names. Every table may be read and added to; only the tables named further down may be changed, fewer cleared.

GRANT USAGE ON SCHEMA :schema TO :service;
REVOKE ALL ON ALL TABLES IN SCHEMA :schema FROM :service;
GRANT SELECT, INSERT ON ALL TABLES IN SCHEMA :schema TO :service;
GRANT USAGE, SELECT ON ALL SEQUENCES IN SCHEMA :schema TO :service;
REVOKE INSERT ON _prisma_migrations FROM :service;

GRANT UPDATE ON
  shop, setup_link, person, bench, device, session, pin_lock, gauge, customer, engine_model, engine, job, part,
  operation_state, work_time, finding, status_link, customer_note, command_answer
TO :service;

GRANT DELETE ON person_role, session, pin_lock, operation_state, command_answer TO :service;
