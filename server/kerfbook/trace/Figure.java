package kerfbook.trace;

import java.util.List;
import java.util.Optional;

/**
 * A figure of a task, with the inputs it was made of.
 *
 * @param step   code of the step
 * @param line   which of the step's lines, counted from 0; absent for a figure of the whole step
 * @param figure quantity, hours-each, difficulty, hours, people, presence, usv-per-h or person-usv
 * @param inputs ids of the {@link Input}s, each once
 */
public record Figure(String step, Optional<Integer> line, String figure, double value, String unit, List<String> inputs) { }
