-- Events between modules are kept no longer: what they ask for is found by the state it left behind,
-- and keeping them took three commits, and a second connection, for each reading.
drop table event_publication;
