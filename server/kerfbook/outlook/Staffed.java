package kerfbook.outlook;

/** Hours and doses of people in the trials of a block, by area and by crew. */
final class Staffed {
    private final Model model;
    private final double[][] factors;
    final double[] personHours = new double[Block.TRIALS];
    final double[] cost = new double[Block.TRIALS];
    final double[][] areas;
    final double[][] crews;
    /** µSv of an hour, and hours, of each staffing of many steps. */
    private final double[][] perHour;
    private final double[][] hours;

    Staffed(Model model, double[][] factors) {
        this.model = model;
        this.factors = factors;
        areas = new double[model.areas.size()][Block.TRIALS];
        crews = new double[model.crews.size()][Block.TRIALS];
        perHour = new double[model.staffings.size()][Block.TRIALS];
        hours = new double[model.staffings.size()][Block.TRIALS];
    }

    /** Once the factors are drawn. */
    void begin(int n) {
        Rows.fill(areas, n, 0);
        Rows.fill(crews, n, 0);
        Rows.fill(hours, n, 0);
        Rows.fill(personHours, n, 0);
        Rows.fill(cost, n, 0);
        for (int i = 0; i < perHour.length; i++) {
            double known = 0;
            for (Staffing.Line line : model.staffings.get(i).lines()) {
                known += line.rate() == Program.ONE ? line.usvPerHour() : 0;
            }
            Rows.fill(perHour[i], n, known);
            for (Staffing.Line line : model.staffings.get(i).lines()) {
                if (line.rate() != Program.ONE) {
                    Rows.add(perHour[i], n, factors[line.rate()], line.usvPerHour());
                }
            }
        }
    }

    /** Takes the hours of a step; its dose is added to the task's. */
    void step(Work.Step step, int n, double[] took, double[] usv) {
        if (step.staffed >= 0) {
            Rows.addBoth(usv, hours[step.staffed], n, took, perHour[step.staffed]);
            return;
        }
        pay(step.staffing, n, took);
        for (Staffing.Line line : step.staffing.lines()) {
            if (line.rate() == Program.ONE) {
                Rows.addScaled(usv, areas[line.area()], crews[line.crew()], n, took, line.usvPerHour());
            } else {
                Rows.addProduct(usv, areas[line.area()], crews[line.crew()], n, took, factors[line.rate()], line.usvPerHour());
            }
        }
    }

    /** Once all steps are taken. */
    void end(int n) {
        for (int i = 0; i < hours.length; i++) {
            pay(model.staffings.get(i), n, hours[i]);
            for (Staffing.Line line : model.staffings.get(i).lines()) {
                if (line.rate() == Program.ONE) {
                    Rows.add(areas[line.area()], n, hours[i], line.usvPerHour());
                    Rows.add(crews[line.crew()], n, hours[i], line.usvPerHour());
                } else {
                    Rows.addProduct(areas[line.area()], crews[line.crew()], n, hours[i], factors[line.rate()], line.usvPerHour());
                }
            }
        }
    }

    private void pay(Staffing staffing, int n, double[] took) {
        Rows.add(personHours, n, took, staffing.people());
        if (staffing.cost() > 0) {
            Rows.add(cost, n, took, staffing.cost());
        }
    }
}
