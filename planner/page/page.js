"use strict";
// Everything is there without this script but the slider, and what goes by today's date rather than
// by the day the season was made: which week is this one, and where a bed's year begins to be seen.
(() => {
  const DAY_MS = 86400000;
  const byId = (id) => document.getElementById(id);
  const pad = (number) => String(number).padStart(2, "0");
  const now = new Date();
  const today = `${now.getFullYear()}-${pad(now.getMonth() + 1)}-${pad(now.getDate())}`;
  const ms = (day) => Date.parse(`${day}T00:00:00Z`);
  const dayAfter = (day, days) => new Date(ms(day) + days * DAY_MS).toISOString().slice(0, 10);
  const inWords = (day) =>
    new Date(ms(day)).toLocaleDateString("en-GB", {
      weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC",
    }).replace(",", "");

  const shortly = (day) => inWords(day).split(" ").slice(1).join(" ");
  const ENDS_WITH_A_DAY = /on \d+ \p{L}+ \d{4}$/u;

  function showWeeks() {
    const monday = dayAfter(today, -((new Date(ms(today)).getUTCDay() + 6) % 7));
    const weeks = [...document.querySelectorAll("details.week")];
    const past = weeks.filter((week) => week.dataset.monday < monday);
    const coming = weeks.filter((week) => week.dataset.monday >= monday);
    byId("past-weeks").append(...past);
    byId("coming-weeks").append(...coming);
    byId("earlier").hidden = past.length === 0;
    for (const week of weeks) {
      const away = (ms(week.dataset.monday) - ms(monday)) / (7 * DAY_MS);
      week.open = away === 0 || away === 1;
      week.querySelector(".which").textContent =
        away === 0 ? "This week" : away === 1 ? "Next week" : "";
    }
    const whenOf = (week) => week.querySelector(".when").textContent;
    let said = `Today is ${inWords(today)}.`;
    if (coming.length === 0) {
      said += " Nothing more is to do this season.";
    } else if (coming[0].dataset.monday > monday) {
      coming[0].open = true;
      said += ` Nothing is to do this week; next comes the week of ${whenOf(coming[0])}.`;
    }
    byId("now").textContent = said;
  }

  function showDays() {
    const slider = byId("day");
    const first = slider.dataset.first;
    const last = Number(slider.max);
    const named = [...document.querySelectorAll("#any-day svg > title, #any-day svg > text")]
      .filter((one) => ENDS_WITH_A_DAY.test(one.textContent));
    const inPicture = document.querySelector("#any-day svg > desc");
    const drawn = [...document.querySelectorAll("#any-day [data-from]")];
    const rows = [...document.querySelectorAll("#standing tbody tr")].map((row) => {
      const [from, to] = [...row.querySelectorAll("time")].map((one) => one.dateTime);
      return { row, from, to };
    });
    const beds = new Set(rows.map((one) => one.row.cells[0].textContent));

    function show() {
      const day = dayAfter(first, Number(slider.value));
      for (const one of drawn) {
        const stands = one.dataset.from <= day && day < one.dataset.to;
        if (stands) {
          one.removeAttribute("display");
        } else {
          one.setAttribute("display", "none");
        }
      }
      let standing = 0;
      const taken = new Set();
      for (const { row, from, to } of rows) {
        row.hidden = !(from <= day && day < to);
        if (!row.hidden) {
          standing += 1;
          taken.add(row.cells[0].textContent);
        }
      }
      const said = standing === 0
        ? "nothing stands in the beds"
        : `${standing} ${standing === 1 ? "block" : "blocks"} in ${taken.size} of ${beds.size} ` +
          (beds.size === 1 ? "bed" : "beds");
      byId("day-said").textContent = `${inWords(day)}: ${said}.`;
      slider.setAttribute("aria-valuetext", inWords(day));
      for (const one of named) {
        one.textContent = one.textContent.replace(ENDS_WITH_A_DAY, `on ${shortly(day)}`);
      }
      inPicture.textContent = `${inWords(day)}: ${said}. The table below names them.`;
    }

    function moveTo(number) {
      slider.value = String(Math.min(last, Math.max(0, number)));
      show();
    }

    const todays = Math.round((ms(today) - ms(first)) / DAY_MS);
    slider.addEventListener("input", show);
    for (const button of document.querySelectorAll(".steps button")) {
      const days = Number(button.dataset.days);
      button.addEventListener("click", () => moveTo(days === 0 ? todays : Number(slider.value) + days));
    }
    byId("one-day").hidden = true;
    byId("any-day").hidden = false;
    if (todays >= 0 && todays <= last) {
      slider.value = String(todays);
    }
    show();
  }

  function openWhatIsNamed() {
    const named = byId(decodeURIComponent(location.hash.slice(1)));
    for (let one = named; one; one = one.parentElement) {
      if (one.tagName === "DETAILS") {
        one.open = true;
      }
    }
    if (named) {
      named.scrollIntoView();
    }
  }

  // A bed's year is wider than a phone: it begins at today, or at the day of planning.
  function showToday() {
    for (const drawing of document.querySelectorAll("#year .drawing")) {
      const ground = drawing.querySelector("[data-first]");
      const days = (day) => (ms(day) - ms(ground.dataset.first)) / DAY_MS;
      const share = days(today) / days(ground.dataset.end);
      const box = ground.getBoundingClientRect();
      const mark = drawing.querySelector(".as-of");
      const here = share >= 0 && share < 1 || !mark
        ? box.left + Math.max(0, Math.min(1, share)) * box.width
        : mark.getBoundingClientRect().left;
      drawing.scrollLeft += here - drawing.getBoundingClientRect().left - drawing.clientWidth / 4;
    }
  }

  showWeeks();
  showDays();
  showToday();
  addEventListener("hashchange", openWhatIsNamed);
  if (location.hash) {
    openWhatIsNamed();
  }
})();
