-- Who entered a version of a type; unknown for those that were there before.
ALTER TABLE "equipment_types" ADD COLUMN "entered_by" TEXT;

-- A request key may stand for an entry of the catalogue, which belongs to no aircraft.
ALTER TABLE "commits" ALTER COLUMN "aircraft_id" DROP NOT NULL;
