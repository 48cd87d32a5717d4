/* As kernel/queue.ts: coming events in equal slices of the time to the horizon (a calendar queue). */
#ifndef QUEUE_H
#define QUEUE_H

#include <stdbool.h>

#include "../flat.h"

/* No history of 100,000 events has more waiting than this. */
enum { SLICES = 512, ROOM = 1 << 17 };

typedef struct {
  double time;
  /* Value of the clock at which it is due; for calendar events the time itself. */
  double due;
  i32 code, stamp;
  /* How often the clocks had stood still when it was put in. */
  i32 pauses;
  /* The event after it in its slice, or the next free place; -1 ends both lists. */
  i32 next;
} Event;

static struct {
  int size, unused, slice;
  i32 free;
  double slicesPerYear;
  i32 first[SLICES];
  Event events[ROOM];
} queue;

static void clearQueue(void) {
  queue.slice = 0;
  queue.free = -1;
  queue.unused = 0;
  if (queue.size == 0) return;
  queue.size = 0;
  for (int i = 0; i < SLICES; i++) queue.first[i] = -1;
}

static void openQueue(double horizonYears) {
  queue.slicesPerYear = (SLICES - 1) / horizonYears;
  queue.size = 1;
  clearQueue();
}

static int takePlace(void) {
  if (queue.free >= 0) {
    const int place = queue.free;
    queue.free = queue.events[place].next;
    return place;
  }
  if (queue.unused == ROOM) {
    fprintf(stderr, "too many events wait\n");
    exit(1);
  }
  return queue.unused++;
}

/* Puts an event in, which is not before the last event taken. Of events at one moment the first put in comes first. */
static void push(Event event) {
  const int place = takePlace();
  const int into = (int)(event.time * queue.slicesPerYear);
  int before = -1;
  int after = queue.first[into];
  queue.size++;
  while (after >= 0 && queue.events[after].time <= event.time) {
    before = after;
    after = queue.events[after].next;
  }
  event.next = after;
  queue.events[place] = event;
  if (before < 0) queue.first[into] = place;
  else queue.events[before].next = place;
}

/* Takes the first event of a queue that is not empty. */
static Event takeFirst(void) {
  while (queue.first[queue.slice] < 0) queue.slice++;
  const int place = queue.first[queue.slice];
  const Event event = queue.events[place];
  queue.size--;
  queue.first[queue.slice] = event.next;
  queue.events[place].next = queue.free;
  queue.free = place;
  return event;
}

#endif
