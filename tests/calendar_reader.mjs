// Reads calendars with ical.js and prints, as JSON, the events it found in each.
//
// Usage: node calendar_reader.mjs PREFIX FILE... where `npm install --prefix PREFIX ical.js@2`
// was run before.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [prefix, ...files] = process.argv.slice(2);
const installed = createRequire(resolve(prefix, "package.json")).resolve("ical.js");
const { default: ICAL } = await import(pathToFileURL(installed).href);

ICAL.design.strict = true;

const eventsOf = (file) => {
  const calendar = new ICAL.Component(ICAL.parse(readFileSync(file, "utf8")));
  return calendar.getAllSubcomponents("vevent").map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      description: event.description,
      location: event.location,
      sequence: event.sequence,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      all_day: event.startDate.isDate && event.endDate.isDate,
      status: component.getFirstPropertyValue("status"),
      alarms: component.getAllSubcomponents("valarm").length,
    };
  });
};

process.stdout.write(JSON.stringify(files.map(eventsOf)));
