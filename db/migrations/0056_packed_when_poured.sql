-- A label made ahead names the day that was planned; what is poured under it on another day was packed on that one.
grant update (packed_on) on book.container to sheafbook_app;
