// Reads a calendar on standard input with ical.js and prints what it found as JSON.
//
//   node read_calendar.mjs FOLDER_OF_ICAL_JS events
//   node read_calendar.mjs FOLDER_OF_ICAL_JS hours YEAR    the moment of each half hour on the local clock, from VTIMEZONE alone

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [folder, task, year] = process.argv.slice(2);
const ICAL = (await import(pathToFileURL(`${folder}/dist/ical.js`).href)).default;
const calendar = new ICAL.Component(ICAL.parse(readFileSync(0, "utf-8")));
const zones = calendar.getAllSubcomponents("vtimezone").map((part) => new ICAL.Timezone(part));
for (const zone of zones) {
  ICAL.TimezoneService.register(zone);
}

function readEvent(part) {
  const event = new ICAL.Event(part);
  return {
    uid: event.uid,
    starts: event.startDate.toUnixTime(),
    ends: event.endDate.toUnixTime(),
    summary: event.summary,
    description: event.description,
    location: event.location,
    sequence: event.sequence,
    status: part.getFirstPropertyValue("status"),
    transp: part.getFirstPropertyValue("transp"),
    categories: part.getFirstProperty("categories").getValues(),
    leads: part.getAllSubcomponents("valarm").map((alarm) => alarm.getFirstPropertyValue("trigger").toSeconds()),
  };
}

function readHours(zone) {
  const start = Date.UTC(Number(year), 0, 1);
  const count = (Date.UTC(Number(year) + 1, 0, 1) - start) / 1800000;
  return Array.from({ length: count }, (_, n) => {
    const time = ICAL.Time.fromJSDate(new Date(start + n * 1800000), true);
    time.zone = zone;
    return time.toUnixTime();
  });
}

const answer =
  task === "hours"
    ? readHours(zones[0])
    : {
        name: calendar.getFirstPropertyValue("name"),
        refresh: calendar.getFirstPropertyValue("refresh-interval").toSeconds(),
        refreshType: calendar.getFirstProperty("refresh-interval").type,
        source: calendar.getFirstPropertyValue("source"),
        sourceType: calendar.getFirstProperty("source").type,
        events: calendar.getAllSubcomponents("vevent").map(readEvent),
      };
console.log(JSON.stringify(answer));
