-- When somebody means to lay a duty down, so that whoever takes it over is found in time. The day ends nothing by itself.
alter table book.duty_grant add column ends_on date;
grant update (ends_on) on book.duty_grant to sheafbook_app;
