create index if not exists entry_stamp on entry (stamp);
