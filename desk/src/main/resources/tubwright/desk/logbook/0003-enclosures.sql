create table if not exists enclosure (
    entry bigint not null references entry (id) on delete cascade,
    name varchar(32) not null,
    content clob not null,
    primary key (entry, name)
);
