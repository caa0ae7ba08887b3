-- Module watch. A judgement is read and written whole, a megabyte of it after ten years: taking it apart into jsonb cost more
-- than keeping it.

alter table judgement
  alter column document type json using document::text::json;
