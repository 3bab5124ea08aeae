-- When it was done, by the clock of the device that kept it until the network was back. It orders nothing: the server's own
-- time stands beside it.
ALTER TABLE inspection ADD COLUMN device_at timestamptz;
ALTER TABLE part_lot ADD COLUMN device_at timestamptz;
ALTER TABLE finding ADD COLUMN device_at timestamptz;
ALTER TABLE photograph ADD COLUMN device_at timestamptz;
