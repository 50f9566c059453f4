create table if not exists built (
    number int primary key,
    entry bigint not null references entry (id) on delete cascade,
    issue varchar(60) not null,
    design varchar(64) not null,
    plan clob not null,
    content clob not null
);
create table if not exists built_part (
    number int not null references built (number) on delete cascade,
    piece varchar(300) not null,
    pattern varchar(300) not null,
    material varchar(300) not null,
    batch varchar(300) not null
);
create index if not exists built_part_batch on built_part (batch);
