create table if not exists entry (
    id bigint generated always as identity primary key,
    stamp varchar(40) not null,
    kind varchar(16) not null,
    words varchar(4000) not null,
    revision varchar(32) not null
);
