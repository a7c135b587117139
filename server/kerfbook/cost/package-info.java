/** What a campaign costs in one currency and price year: labour, equipment, consumables, packages and drums, line by line. */
package kerfbook.cost;
