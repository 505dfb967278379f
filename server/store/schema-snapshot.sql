CREATE TABLE "actions" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "owner_kind" TEXT NOT NULL,
  "owner" TEXT NOT NULL,
  "rank" TEXT NOT NULL,
  "guard" TEXT NOT NULL CHECK (json_valid("guard")),
  "act" TEXT NOT NULL CHECK (json_valid("act")),
  "existence" TEXT NOT NULL CHECK (json_valid("existence")),
  "timing" TEXT CHECK (json_valid("timing")),
  "purpose" TEXT CHECK (json_valid("purpose")),
  "threat" TEXT CHECK (json_valid("threat")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "anchors" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "mark" TEXT NOT NULL REFERENCES "marks" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "passage" TEXT REFERENCES "passages" ("id") DEFERRABLE INITIALLY DEFERRED,
  "text" TEXT REFERENCES "passage_texts" ("id") DEFERRABLE INITIALLY DEFERRED,
  "from" INTEGER,
  "to" INTEGER,
  "from_side" TEXT,
  "to_side" TEXT,
  "quote" TEXT,
  "prefix" TEXT,
  "suffix" TEXT,
  "fate" TEXT,
  "region" TEXT REFERENCES "regions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "attachments" (
  "hash" TEXT PRIMARY KEY NOT NULL,
  "media_type" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "size" INTEGER NOT NULL,
  "bytes" BLOB NOT NULL
) STRICT;

CREATE TABLE "change_rows" (
  "change" INTEGER NOT NULL REFERENCES "changes" ("number"),
  "seq" INTEGER NOT NULL,
  "kind" TEXT NOT NULL,
  "id" TEXT NOT NULL,
  "base" INTEGER NOT NULL,
  "version" INTEGER NOT NULL,
  "before" TEXT CHECK (json_valid("before")),
  "after" TEXT CHECK (json_valid("after")),
  PRIMARY KEY ("change", "seq")
) STRICT, WITHOUT ROWID;

CREATE TABLE "change_works" (
  "work" TEXT NOT NULL,
  "change" INTEGER NOT NULL REFERENCES "changes" ("number"),
  PRIMARY KEY ("work", "change")
) STRICT, WITHOUT ROWID;

CREATE TABLE "changes" (
  "number" INTEGER PRIMARY KEY NOT NULL,
  "id" TEXT NOT NULL UNIQUE,
  "when" TEXT NOT NULL,
  "who" TEXT NOT NULL,
  "why" TEXT NOT NULL,
  "sitting" TEXT,
  "group" TEXT,
  "undoes" TEXT,
  "request_hash" TEXT NOT NULL,
  "merged" TEXT NOT NULL CHECK (json_valid("merged"))
) STRICT;

CREATE TABLE "cruxes" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercise" TEXT REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "is" TEXT NOT NULL,
  "scope" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "arises_when" TEXT NOT NULL CHECK (json_valid("arises_when")),
  "left_free" TEXT CHECK (json_valid("left_free")),
  "exceptions" TEXT NOT NULL CHECK (json_valid("exceptions")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "editions" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercises" TEXT NOT NULL CHECK (json_valid("exercises")),
  "number" INTEGER NOT NULL,
  "title" TEXT NOT NULL,
  "issued" TEXT NOT NULL,
  "choice" TEXT NOT NULL CHECK (json_valid("choice")),
  "variant" TEXT REFERENCES "variants" ("id") DEFERRABLE INITIALLY DEFERRED,
  "model" TEXT NOT NULL CHECK (json_valid("model")),
  "papers" TEXT NOT NULL CHECK (json_valid("papers")),
  "at" INTEGER NOT NULL,
  "recipients" TEXT NOT NULL CHECK (json_valid("recipients")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "elements" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "exercise" TEXT NOT NULL REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "guard" TEXT NOT NULL CHECK (json_valid("guard")),
  "existence" TEXT NOT NULL CHECK (json_valid("existence")),
  "order" TEXT CHECK (json_valid("order")),
  "role" TEXT NOT NULL,
  "copy_of" TEXT REFERENCES "elements" ("id") DEFERRABLE INITIALLY DEFERRED,
  "note" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "title" TEXT,
  "threat" TEXT CHECK (json_valid("threat")),
  "cue" TEXT CHECK (json_valid("cue")),
  "of" TEXT CHECK (json_valid("of")),
  "manner" TEXT,
  "except" TEXT CHECK (json_valid("except")),
  "times" TEXT CHECK (json_valid("times")),
  "demand" TEXT,
  "from" TEXT REFERENCES "elements" ("id") DEFERRABLE INITIALLY DEFERRED,
  "to" TEXT REFERENCES "elements" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rule" TEXT REFERENCES "rules" ("id") DEFERRABLE INITIALLY DEFERRED,
  "from_passage" TEXT REFERENCES "passages" ("id") DEFERRABLE INITIALLY DEFERRED,
  "to_passage" TEXT REFERENCES "passages" ("id") DEFERRABLE INITIALLY DEFERRED,
  "estimate" TEXT CHECK (json_valid("estimate")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "exercises" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "label" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "ground" TEXT REFERENCES "grounds" ("id") DEFERRABLE INITIALLY DEFERRED,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "faults" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "of" TEXT NOT NULL,
  "target" TEXT NOT NULL,
  "rank" TEXT NOT NULL,
  "fault" TEXT NOT NULL,
  "correction" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "grounds" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "slots" TEXT NOT NULL CHECK (json_valid("slots")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "holds" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "for" TEXT NOT NULL CHECK (json_valid("for")),
  "hands" TEXT NOT NULL,
  "strong" INTEGER NOT NULL CHECK ("strong" IN (0, 1)),
  "slots" TEXT NOT NULL CHECK (json_valid("slots")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "kits" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "horse" TEXT NOT NULL CHECK (json_valid("horse")),
  "rider" TEXT NOT NULL CHECK (json_valid("rider")),
  "objects" TEXT NOT NULL CHECK (json_valid("objects")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "layers" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "by" TEXT NOT NULL,
  "language" TEXT NOT NULL,
  "witness" TEXT REFERENCES "witnesses" ("id") DEFERRABLE INITIALLY DEFERRED,
  "urn" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "lessons" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT,
  "title" TEXT NOT NULL,
  "contact" TEXT NOT NULL,
  "equipment" TEXT NOT NULL,
  "items" TEXT NOT NULL CHECK (json_valid("items")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "marks" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "of" TEXT NOT NULL,
  "target" TEXT NOT NULL,
  "as" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "mentions" (
  "kind" TEXT NOT NULL,
  "id" TEXT NOT NULL,
  "to_kind" TEXT NOT NULL,
  "to_id" TEXT NOT NULL,
  PRIMARY KEY ("kind", "id", "to_kind", "to_id")
) STRICT, WITHOUT ROWID;

CREATE TABLE "migrations" ("number" INTEGER PRIMARY KEY, "name" TEXT NOT NULL, "hash" TEXT NOT NULL) STRICT;

CREATE TABLE "movements" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "notes" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "text" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "objects" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "slots" TEXT NOT NULL CHECK (json_valid("slots")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "passage_links" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "is" TEXT NOT NULL,
  "from" TEXT NOT NULL CHECK (json_valid("from")),
  "to" TEXT NOT NULL CHECK (json_valid("to")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "passage_texts" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "passage" TEXT NOT NULL REFERENCES "passages" ("id") DEFERRABLE INITIALLY DEFERRED,
  "revision" TEXT NOT NULL REFERENCES "revisions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "number" INTEGER NOT NULL,
  "doc" TEXT NOT NULL CHECK (json_valid("doc")),
  "text" TEXT NOT NULL,
  "steps" TEXT NOT NULL CHECK (json_valid("steps")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "passages" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercise" TEXT REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "references" TEXT NOT NULL CHECK (json_valid("references")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "pictures" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "witness" TEXT REFERENCES "witnesses" ("id") DEFERRABLE INITIALLY DEFERRED,
  "where" TEXT NOT NULL,
  "attachment" TEXT NOT NULL,
  "width" INTEGER NOT NULL,
  "height" INTEGER NOT NULL,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "questions" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercise" TEXT REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "crux" TEXT REFERENCES "cruxes" ("id") DEFERRABLE INITIALLY DEFERRED,
  "text" TEXT NOT NULL,
  "to" TEXT NOT NULL,
  "by" TEXT NOT NULL,
  "asked" TEXT,
  "effort" INTEGER,
  "answers" TEXT NOT NULL CHECK (json_valid("answers")),
  "state" TEXT NOT NULL CHECK (json_valid("state")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "readings" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "crux" TEXT NOT NULL REFERENCES "cruxes" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "argument" TEXT NOT NULL,
  "holder" TEXT NOT NULL,
  "evidence" TEXT NOT NULL CHECK (json_valid("evidence")),
  "requires" TEXT NOT NULL CHECK (json_valid("requires")),
  "excludes" TEXT NOT NULL CHECK (json_valid("excludes")),
  "values" TEXT NOT NULL CHECK (json_valid("values")),
  "status" TEXT NOT NULL CHECK (json_valid("status")),
  "confidence" TEXT,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "regions" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "picture" TEXT NOT NULL REFERENCES "pictures" ("id") DEFERRABLE INITIALLY DEFERRED,
  "corners" TEXT NOT NULL CHECK (json_valid("corners")),
  "label" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "reports" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "edition" TEXT NOT NULL REFERENCES "editions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "shown" TEXT NOT NULL,
  "element" TEXT REFERENCES "elements" ("id") DEFERRABLE INITIALLY DEFERRED,
  "who" TEXT NOT NULL,
  "on" TEXT NOT NULL,
  "text" TEXT NOT NULL,
  "state" TEXT NOT NULL,
  "answer" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "revisions" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "layer" TEXT NOT NULL REFERENCES "layers" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "label" TEXT NOT NULL,
  "received" TEXT,
  "from" TEXT NOT NULL,
  "attachment" TEXT,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "rules" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "code" TEXT NOT NULL,
  "sentence" TEXT NOT NULL,
  "basis" TEXT NOT NULL,
  "support" TEXT NOT NULL CHECK (json_valid("support")),
  "severity" TEXT NOT NULL,
  "reach" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "senses" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "term" TEXT NOT NULL REFERENCES "terms" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "gloss" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "sittings" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL,
  "who" TEXT NOT NULL CHECK (json_valid("who")),
  "place" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "slips" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "from" TEXT NOT NULL REFERENCES "editions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "to" TEXT NOT NULL REFERENCES "editions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL,
  "entries" TEXT NOT NULL CHECK (json_valid("entries")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "sources" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "item" TEXT NOT NULL CHECK (json_valid("item")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "standings" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercise" TEXT REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "guard" TEXT NOT NULL CHECK (json_valid("guard")),
  "existence" TEXT NOT NULL CHECK (json_valid("existence")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "stations" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "ground" TEXT NOT NULL REFERENCES "grounds" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "outline" TEXT CHECK (json_valid("outline")),
  "partner" TEXT REFERENCES "stations" ("id") DEFERRABLE INITIALLY DEFERRED,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "terms" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "word" TEXT NOT NULL,
  "language" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "threats" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "name" TEXT NOT NULL,
  "slots" TEXT NOT NULL CHECK (json_valid("slots")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "trials" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "exercise" TEXT NOT NULL REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "on" TEXT NOT NULL,
  "who" TEXT NOT NULL,
  "way" TEXT NOT NULL,
  "choice" TEXT NOT NULL CHECK (json_valid("choice")),
  "variant" TEXT REFERENCES "variants" ("id") DEFERRABLE INITIALLY DEFERRED,
  "kit" TEXT REFERENCES "kits" ("id") DEFERRABLE INITIALLY DEFERRED,
  "edition" TEXT REFERENCES "editions" ("id") DEFERRABLE INITIALLY DEFERRED,
  "drill" TEXT CHECK (json_valid("drill")),
  "outcome" TEXT NOT NULL,
  "findings" TEXT NOT NULL CHECK (json_valid("findings")),
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "variants" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "exercise" TEXT REFERENCES "exercises" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "way" TEXT NOT NULL,
  "deltas" TEXT NOT NULL CHECK (json_valid("deltas")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "waivers" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "rule" TEXT NOT NULL,
  "element" TEXT NOT NULL REFERENCES "elements" ("id") DEFERRABLE INITIALLY DEFERRED,
  "reason" TEXT NOT NULL,
  "basis" TEXT NOT NULL CHECK (json_valid("basis")),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "witnesses" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "work" TEXT NOT NULL REFERENCES "works" ("id") DEFERRABLE INITIALLY DEFERRED,
  "rank" TEXT NOT NULL,
  "siglum" TEXT NOT NULL,
  "is" TEXT NOT NULL,
  "name" TEXT NOT NULL,
  "place" TEXT NOT NULL,
  "date" TEXT NOT NULL,
  "note" TEXT NOT NULL,
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE TABLE "works" (
  "id" TEXT PRIMARY KEY NOT NULL,
  "rank" TEXT NOT NULL,
  "title" TEXT NOT NULL,
  "author" TEXT NOT NULL,
  "levels" TEXT NOT NULL CHECK (json_valid("levels")),
  "note" TEXT NOT NULL,
  "source" TEXT REFERENCES "sources" ("id") DEFERRABLE INITIALLY DEFERRED,
  "invented" INTEGER NOT NULL CHECK ("invented" IN (0, 1)),
  "row_version" INTEGER NOT NULL CHECK ("row_version" >= 1)
) STRICT;

CREATE INDEX "actions_by_tie" ON "actions" ("owner_kind", "owner");

CREATE INDEX "anchors_by_mark" ON "anchors" ("mark");

CREATE INDEX "anchors_by_passage" ON "anchors" ("passage");

CREATE INDEX "anchors_by_region" ON "anchors" ("region");

CREATE INDEX "anchors_by_text" ON "anchors" ("text");

CREATE UNIQUE INDEX "change_rows_by_row" ON "change_rows" ("kind", "id", "version");

CREATE INDEX "change_works_by_change" ON "change_works" ("change");

CREATE INDEX "changes_by_group" ON "changes" ("group") WHERE "group" IS NOT NULL;

CREATE INDEX "changes_by_undoes" ON "changes" ("undoes") WHERE "undoes" IS NOT NULL;

CREATE INDEX "cruxes_by_exercise" ON "cruxes" ("exercise");

CREATE INDEX "cruxes_by_work" ON "cruxes" ("work");

CREATE INDEX "editions_by_variant" ON "editions" ("variant");

CREATE INDEX "editions_by_work" ON "editions" ("work");

CREATE INDEX "elements_by_copy_of" ON "elements" ("copy_of");

CREATE INDEX "elements_by_exercise" ON "elements" ("exercise");

CREATE INDEX "elements_by_from" ON "elements" ("from");

CREATE INDEX "elements_by_from_passage" ON "elements" ("from_passage");

CREATE INDEX "elements_by_rule" ON "elements" ("rule");

CREATE INDEX "elements_by_to" ON "elements" ("to");

CREATE INDEX "elements_by_to_passage" ON "elements" ("to_passage");

CREATE INDEX "exercises_by_ground" ON "exercises" ("ground");

CREATE INDEX "exercises_by_work" ON "exercises" ("work");

CREATE INDEX "faults_by_tie" ON "faults" ("of", "target");

CREATE INDEX "faults_by_work" ON "faults" ("work");

CREATE INDEX "grounds_by_work" ON "grounds" ("work");

CREATE INDEX "holds_by_work" ON "holds" ("work");

CREATE INDEX "kits_by_work" ON "kits" ("work");

CREATE INDEX "layers_by_witness" ON "layers" ("witness");

CREATE INDEX "layers_by_work" ON "layers" ("work");

CREATE INDEX "lessons_by_work" ON "lessons" ("work");

CREATE INDEX "marks_by_tie" ON "marks" ("of", "target");

CREATE INDEX "marks_by_work" ON "marks" ("work");

CREATE INDEX "mentions_by_target" ON "mentions" ("to_kind", "to_id");

CREATE INDEX "movements_by_work" ON "movements" ("work");

CREATE INDEX "notes_by_work" ON "notes" ("work");

CREATE INDEX "objects_by_work" ON "objects" ("work");

CREATE INDEX "passage_links_by_work" ON "passage_links" ("work");

CREATE INDEX "passage_texts_by_passage" ON "passage_texts" ("passage");

CREATE INDEX "passage_texts_by_revision" ON "passage_texts" ("revision");

CREATE INDEX "passages_by_exercise" ON "passages" ("exercise");

CREATE INDEX "passages_by_work" ON "passages" ("work");

CREATE INDEX "pictures_by_witness" ON "pictures" ("witness");

CREATE INDEX "pictures_by_work" ON "pictures" ("work");

CREATE INDEX "questions_by_crux" ON "questions" ("crux");

CREATE INDEX "questions_by_exercise" ON "questions" ("exercise");

CREATE INDEX "questions_by_work" ON "questions" ("work");

CREATE INDEX "readings_by_crux" ON "readings" ("crux");

CREATE INDEX "regions_by_picture" ON "regions" ("picture");

CREATE INDEX "reports_by_edition" ON "reports" ("edition");

CREATE INDEX "reports_by_element" ON "reports" ("element");

CREATE INDEX "revisions_by_layer" ON "revisions" ("layer");

CREATE INDEX "rules_by_work" ON "rules" ("work");

CREATE INDEX "senses_by_term" ON "senses" ("term");

CREATE INDEX "sittings_by_work" ON "sittings" ("work");

CREATE INDEX "slips_by_from" ON "slips" ("from");

CREATE INDEX "slips_by_to" ON "slips" ("to");

CREATE INDEX "sources_by_work" ON "sources" ("work");

CREATE INDEX "standings_by_exercise" ON "standings" ("exercise");

CREATE INDEX "standings_by_work" ON "standings" ("work");

CREATE INDEX "stations_by_ground" ON "stations" ("ground");

CREATE INDEX "stations_by_partner" ON "stations" ("partner");

CREATE INDEX "terms_by_work" ON "terms" ("work");

CREATE INDEX "threats_by_work" ON "threats" ("work");

CREATE INDEX "trials_by_edition" ON "trials" ("edition");

CREATE INDEX "trials_by_exercise" ON "trials" ("exercise");

CREATE INDEX "trials_by_kit" ON "trials" ("kit");

CREATE INDEX "trials_by_variant" ON "trials" ("variant");

CREATE INDEX "variants_by_exercise" ON "variants" ("exercise");

CREATE INDEX "variants_by_work" ON "variants" ("work");

CREATE INDEX "waivers_by_element" ON "waivers" ("element");

CREATE INDEX "witnesses_by_work" ON "witnesses" ("work");

CREATE INDEX "works_by_source" ON "works" ("source");
