package kerfbook.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables of dosimeter readings: what they are read as, and what is refused rather than guessed. */
class ReadingsTest {
    private static final String HEADING = "worker;task;date;area;hours;usv;remark\n";
    private static final LocalDate DAY = LocalDate.of(2027, 3, 15);

    /** Two people, two areas, two tasks of the same name and one of its own. */
    private static LogPlan plan() {
        Map<String, LogPlan.Job> tasks = new LinkedHashMap<>();
        for (List<String> task : List.of(List.of("ring/r/set-up", "Set up"), List.of("lid/r/set-up", "Set up"), List.of("ring/r/cut", "Cut the ring"))) {
            tasks.put(task.get(0), new LogPlan.Job(task.get(0), task.get(1), Optional.empty(), "cutting", DAY, DAY, Map.of("pool-edge", 20.0), Set.of("rigger"), List.of(), Map.of()));
        }
        return new LogPlan("Ring", true, 6, Map.of("W1", List.of("rigger"), "W2", List.of("rigger")), tasks,
            Map.of("pool-edge", new LogPlan.Place("pool-edge", "Pool edge", List.of()), "hall", new LogPlan.Place("hall", "Hall", List.of())));
    }

    private static Readings read(String text) {
        return Readings.of(text, plan());
    }

    private static Reading reading(double hours, double usv, String remark) {
        return new Reading("W1", "ring/r/cut", DAY, "pool-edge", hours, usv, remark);
    }

    /** BY HAND: the same reading in three separators, in both decimals, in another order of columns, with names in place of codes, with a mark at the start. */
    @ParameterizedTest
    @ValueSource(strings = {
        "worker,task,date,area,hours,usv,remark\nW1,ring/r/cut,2027-03-15,pool-edge,1.5,42,",
        "worker;task;date;area;hours;usv;remark\nW1;ring/r/cut;2027-03-15;pool-edge;1,5;42,0;",
        "worker\ttask\tdate\tarea\thours\tusv\nW1\tring/r/cut\t2027-03-15\tpool-edge\t1.50\t42",
        "\uFEFFWORKER, Task ,Date,Area,Hours,uSv\r\nW1, ring/r/cut ,2027-03-15,pool-edge,1.5,42\r\n",
        "usv;hours;area;date;task;worker\n42;1,5;Pool edge;2027-03-15;cut the ring;W1\n;;;;;\n\n",
        "worker,task,date,area,hours,usv,remark\nW1,\"ring/r/cut\",2027-03-15,pool-edge,\"1,5\",\"42\",\"\"",
        "worker;serial;task;date;area;hours;usv\nW1;0815;ring/r/cut;2027-03-15;pool-edge;1.5;42;;"})
    void one_reading_written_in_many_ways(String text) {
        List<Readings.Row> rows = read(text).rows();
        assertEquals(List.of(List.of()), rows.stream().map(Readings.Row::faults).toList());
        assertEquals(List.of(reading(1.5, 42, "")), rows.stream().map(row -> row.reading().orElseThrow()).toList());
        assertEquals(2, rows.get(0).line());
    }

    /** BY HAND: a remark keeps its separators and marks; columns that nobody asked for are named. */
    @Test
    void quotation_marks_keep_separators() {
        Readings found = read("worker,serial,task,date,area,hours,usv,remark\nW1,0815,ring/r/cut,2027-03-15,pool-edge,1.5,42,\"two, \"\"wet\"\" hoses\"");
        assertEquals(List.of("serial"), found.ignored());
        assertEquals("two, \"wet\" hoses", found.rows().get(0).reading().orElseThrow().remark());
    }

    /** BY HAND: 1.250 alone may be 1.25 or 1250 and is refused; beside 0.5 the point is the decimal mark; beside 0,5 it is refused again. */
    @Test
    void a_mark_before_three_digits_is_read_only_where_the_table_shows_what_it_is() {
        String row = "W1;ring/r/cut;2027-03-15;pool-edge;";
        assertEquals("\"1.250\" may be 1250 or 1.25. Write it so that it can only be one.", read(HEADING + row + "1.250;42;").rows().get(0).faults().get(0).detail());
        assertEquals(reading(1.25, 42, ""), read(HEADING + row + "1.250;42;\n" + row + "0.5;1;").rows().get(0).reading().orElseThrow());
        assertTrue(read(HEADING + row + "1.250;42;\n" + row + "0,5;1;").rows().get(0).reading().isEmpty());
        assertEquals(reading(0.125, 1234.5678, ""), read(HEADING + row + "0,125;1234,5678;").rows().get(0).reading().orElseThrow());
    }

    /** EDGE: whatever is wrong in a row is named by its column, and the row is not taken. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', ignoreLeadingAndTrailingWhitespace = false, value = {
        "worker|W9;ring/r/cut;2027-03-15;pool-edge;1;2;", "worker|;ring/r/cut;2027-03-15;pool-edge;1;2;", "worker|=cmd();ring/r/cut;2027-03-15;pool-edge;1;2;",
        "worker|../W1;ring/r/cut;2027-03-15;pool-edge;1;2;", "task|W1;../../etc/passwd;2027-03-15;pool-edge;1;2;", "task|W1;<script>alert(1)</script>;2027-03-15;pool-edge;1;2;",
        "task|W1;Set up;2027-03-15;pool-edge;1;2;", "task|W1;;2027-03-15;pool-edge;1;2;", "date|W1;ring/r/cut;15.03.2027;pool-edge;1;2;", "date|W1;ring/r/cut;03/04/2027;pool-edge;1;2;",
        "date|W1;ring/r/cut;2027-02-30;pool-edge;1;2;", "date|W1;ring/r/cut;2027-3-15;pool-edge;1;2;", "date|W1;ring/r/cut;;pool-edge;1;2;", "area|W1;ring/r/cut;2027-03-15;attic;1;2;",
        "hours|W1;ring/r/cut;2027-03-15;pool-edge;;2;", "hours|W1;ring/r/cut;2027-03-15;pool-edge;12.01;2;", "hours|W1;ring/r/cut;2027-03-15;pool-edge;-1;2;",
        "hours|W1;ring/r/cut;2027-03-15;pool-edge;0;2;", "hours|W1;ring/r/cut;2027-03-15;pool-edge;1:30;2;", "hours|W1;ring/r/cut;2027-03-15;pool-edge;1 h;2;",
        "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;4o;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;NaN;",
        "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;1e3;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;0x10;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;< 1;",
        "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;1.200;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;1,234,567;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;100000.1;",
        "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;-0.1;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;=1+1;", "usv|W1;ring/r/cut;2027-03-15;pool-edge;1;٤٢;",
        "|W1;ring/r/cut;2027-03-15;pool-edge;1;2", "|W1;ring/r/cut;2027-03-15;pool-edge;1;2;x;y", "|W1;ring/r/cut;2027-03-15;pool-edge;1;2;\"open", "|W1;ring/r/cut;2027-03-15;pool-edge;1;2;a \"b\""})
    void a_row_that_is_wrong_is_refused_by_its_column(String field, String row) {
        Readings.Row found = read(HEADING + row).rows().get(0);
        assertTrue(found.reading().isEmpty());
        assertEquals(List.of(field == null ? "" : field), found.faults().stream().map(Fault::field).toList(), found.toString());
        assertEquals(row, found.text());
    }

    /** EDGE: a text that as a whole cannot be read. */
    @ParameterizedTest
    @ValueSource(strings = {"", " \n\t\n", "worker;task;date;area;hours;usv", "worker task date\nW1 x y", "worker;task;date;area;hours\nW1;a;b;c;1", "worker;task,date;area;hours;usv\nx",
        "worker;worker;task;date;area;hours;usv\nx", "worker;task;date;area;hours;\"usv\nx", "W1;ring/r/cut;2027-03-15;pool-edge;1;2\nW1;ring/r/cut;2027-03-15;pool-edge;1;2",
        "worker;task;date;area;hours;usv\nW1;ring/r/cut;2027-03-15;pool-edge;1.5;2\nW1;ring/r/cut;2027-03-15;pool-edge;1,5;2"})
    void a_text_that_is_no_table_is_refused_as_a_whole(String text) {
        assertThrows(Invalid.class, () -> read(text));
    }

    /** EDGE: 5000 rows and a million characters are read, one more is refused. */
    @Test
    void as_much_is_read_as_is_said() {
        String row = "W1;ring/r/cut;2027-03-15;pool-edge;1;2;\n";
        assertEquals(5_000, read(HEADING + row.repeat(5_000)).rows().size());
        assertThrows(Invalid.class, () -> read(HEADING + row.repeat(5_001)));
        assertEquals(1, read(HEADING + row + " ".repeat(1_000_000 - HEADING.length() - row.length())).rows().size());
        assertThrows(Invalid.class, () -> read(HEADING + row + " ".repeat(1_000_001 - HEADING.length() - row.length())));
    }

    /** LAW: a row that says what a line before says is marked with that line. */
    @Test
    void a_row_that_stands_there_twice_is_marked() {
        String row = "W1;ring/r/cut;2027-03-15;pool-edge;1;2;";
        List<Readings.Row> rows = read(HEADING + row + "\n" + row + "other\n" + row.replace(";1;2;", ";1.0;2.0;")).rows();
        assertEquals(List.of(Optional.empty(), Optional.empty(), Optional.of(2)), rows.stream().map(Readings.Row::same).toList());
    }
}
