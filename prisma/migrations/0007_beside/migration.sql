-- What a pass was taken beside: a ring gap is true of one bore as it was honed, a bearing of one housing. When that part
-- is moved or its feature measured anew, the pass counts no longer. An empty feature stands for the part as such.
CREATE TABLE pass_beside (
  pass_id     uuid NOT NULL REFERENCES pass (id),
  part_id     uuid NOT NULL REFERENCES part (id),
  feature     text NOT NULL DEFAULT '',
  pass_number integer NOT NULL CONSTRAINT pass_beside_number_known CHECK (pass_number >= 0),
  PRIMARY KEY (pass_id, part_id, feature)
);
CREATE INDEX pass_beside_by_part ON pass_beside (part_id, feature);
