package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import kerfbook.campaign.Area;
import kerfbook.campaign.Shield;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.shielding.Position;

/** Rates along a line, over a platform or over a section of the pool, without background. */
public final class RateMap {
    private static final int MOST_POINTS = 600;

    /**
     * One of the three ways of laying out points.
     *
     * @param on day; left out: the first of the campaign
     */
    public record Question(Optional<LocalDate> on, Optional<Line> line, Optional<Platform> platform, Optional<Section> section) {
        public Question {
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
            line = Require.optional(line);
            platform = Require.optional(platform);
            section = Require.optional(section);
            if (Stream.of(line, platform, section).filter(Optional::isPresent).count() != 1) {
                throw new Invalid("line", "give one of line, platform and section, not none and not several.");
            }
        }
    }

    /** Points evenly spaced, both ends included. */
    public record Line(Area.Place from, Area.Place to, int points) {
        public Line {
            Require.present(from, "from");
            Require.present(to, "to");
            Require.within(points, 2, MOST_POINTS, "points");
        }
    }

    /** A level grid. */
    public record Platform(double upM, Shield.Span right, Shield.Span across, int columns, int rows) {
        public Platform {
            Require.within(upM, -100, 100, "up_m", "m");
            Require.present(right, "right");
            Require.present(across, "across");
            requireSize(columns, rows);
        }
    }

    /** An upright grid from left to right; rows from the bottom up. */
    public record Section(double acrossM, Shield.Span right, Shield.Span up, int columns, int rows) {
        public Section {
            Require.within(acrossM, -1_000, 1_000, "across_m", "m");
            Require.present(right, "right");
            Require.present(up, "up");
            requireSize(columns, rows);
        }
    }

    private static void requireSize(int columns, int rows) {
        Require.within(columns, 2, MOST_POINTS / 2, "columns");
        Require.within(rows, 2, MOST_POINTS / 2, "rows");
        if (columns * rows > MOST_POINTS) {
            throw new Invalid("rows", "makes " + columns * rows + " points with " + columns + " columns; at most " + MOST_POINTS + " are worked out.");
        }
    }

    /**
     * @param usvPerH without background; absent where no rate can be given
     * @param why     why not
     */
    public record At(double rightM, double acrossM, double upM, Optional<Double> usvPerH, boolean extrapolated, Optional<String> why) { }

    /**
     * @param columns    points of a row; all of them for a line
     * @param calibrated whether the factors of the calibration are in it
     */
    public record Answer(LocalDate on, boolean calibrated, int columns, int rows, List<At> points) { }

    private RateMap() { }

    public static Answer of(CampaignRates rates, Question question) {
        LocalDate on = question.on().orElse(rates.campaign().settings().start());
        Situation situation = rates.situation(on);
        Map<String, Double> factors = rates.factors();
        List<Position> points = points(question);
        // each point on its own, so that the answer does not depend on how many work on it
        List<At> at = IntStream.range(0, points.size()).parallel().mapToObj(i -> at(rates, situation, factors, points.get(i))).toList();
        int columns = question.platform().map(Platform::columns).or(() -> question.section().map(Section::columns)).orElse(points.size());
        return new Answer(on, rates.calibrated(), columns, points.size() / columns, at);
    }

    private static At at(CampaignRates rates, Situation situation, Map<String, Double> factors, Position point) {
        double right = point.xMm() / 1000;
        double across = point.yMm() / 1000;
        double up = point.zMm() / 1000;
        if (Surroundings.inConcrete(rates.pool(), point)) {
            return new At(right, across, up, Optional.empty(), false, Optional.of("In the concrete around the pool, where no room is described."));
        }
        try {
            CalculatedRate rate = rates.rates().at(point, situation, factors);
            return new At(right, across, up, Optional.of(rate.usvPerH()), rate.extrapolated(), Optional.empty());
        } catch (Invalid inside) {
            return new At(right, across, up, Optional.empty(), false, Optional.of("The point " + inside.faults().get(0).detail()));
        }
    }

    private static List<Position> points(Question question) {
        List<Position> points = new ArrayList<>();
        question.line().ifPresent(line -> {
            Position from = Surroundings.position(line.from());
            Position to = Surroundings.position(line.to());
            for (int i = 0; i < line.points(); i++) {
                double part = (double) i / (line.points() - 1);
                points.add(new Position(between(from.xMm(), to.xMm(), part), between(from.yMm(), to.yMm(), part), between(from.zMm(), to.zMm(), part)));
            }
        });
        question.platform().ifPresent(grid -> {
            for (int row = 0; row < grid.rows(); row++) {
                for (int column = 0; column < grid.columns(); column++) {
                    points.add(new Position(along(grid.right(), column, grid.columns()), along(grid.across(), row, grid.rows()), 1000 * grid.upM()));
                }
            }
        });
        question.section().ifPresent(grid -> {
            for (int row = 0; row < grid.rows(); row++) {
                for (int column = 0; column < grid.columns(); column++) {
                    points.add(new Position(along(grid.right(), column, grid.columns()), 1000 * grid.acrossM(), along(grid.up(), row, grid.rows())));
                }
            }
        });
        return points;
    }

    private static double along(Shield.Span span, int i, int count) {
        return 1000 * between(span.fromM(), span.toM(), (double) i / (count - 1));
    }

    private static double between(double from, double to, double part) {
        return from + part * (to - from);
    }
}
