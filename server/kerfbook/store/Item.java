package kerfbook.store;

/**
 * One item of a stored campaign: a component, a cut, an area, and so on.
 *
 * @param version the campaign's version at which this item last changed; never the same for two texts
 * @param json    the text as it was given
 */
public record Item(String kind, String code, long version, String json) { }
