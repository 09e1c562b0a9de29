package org.boardtopit.synthetic;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.zip.GZIPInputStream;
import org.boardtopit.body.CentreOfMass;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * The athlete of a rendered clip of the sample competition: places of the joints in every frame and the contacts, as they were
 * rendered (SYN). The motion can be altered by hand, to plant a fault.
 */
public final class RenderedJumper implements Jumper {
    private static final String FOLDER = "/org/boardtopit/sample/";
    private static final CentreOfMass CENTRE = new CentreOfMass(SegmentTable.of(Sex.MALE));

    /** Changes the places of one instant, [point][along, across, height], where they stand. */
    @FunctionalInterface
    public interface Alteration {
        void alter(double timeS, double[][] places);
    }

    private final double[] timesS;
    private final double[][][] places;
    private final List<TrueContact> contacts;
    private final double statureM;

    private RenderedJumper(double[] timesS, double[][][] places, List<TrueContact> contacts, double statureM) {
        this.timesS = timesS;
        this.places = places;
        this.contacts = contacts;
        this.statureM = statureM;
    }

    /** Of a clip of the sample competition, by its name. */
    public static RenderedJumper of(String clip) {
        try {
            JsonNode truth = new ObjectMapper().readTree(resource(clip + ".truth.json"));
            List<double[]> rows = new ArrayList<>();
            List<String> header;
            try (BufferedReader in = new BufferedReader(new InputStreamReader(
                    new GZIPInputStream(resource(clip + ".places.csv.gz")), StandardCharsets.UTF_8))) {
                header = List.of(in.readLine().split(","));
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                    rows.add(Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray());
                }
            }
            double[] times = rows.stream().mapToDouble(r -> r[0]).toArray();
            double[][][] places = rows.stream().map(r -> points(header, r)).toArray(double[][][]::new);
            return new RenderedJumper(
                    times,
                    places,
                    contacts(truth),
                    truth.get("athlete").get("stature_m").asDouble());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static InputStream resource(String name) {
        return RenderedJumper.class.getResourceAsStream(FOLDER + name);
    }

    private static double[][] points(List<String> header, double[] row) {
        double[][] p = new double[BodyPoint.COUNT][];
        for (BodyPoint point : BodyPoint.values()) {
            String name = joint(point);
            int i = header.indexOf(name + "_x_mm");
            p[point.index()] = new double[] {row[i] / 1000, row[i + 1] / 1000, row[i + 2] / 1000};
        }
        return p;
    }

    /** The face is put at nose and ears, fingers at the knuckle. */
    private static String joint(BodyPoint point) {
        String name = point.name().toLowerCase(Locale.ROOT);
        if (name.contains("eye") || name.contains("mouth")) {
            return "nose";
        }
        String side = name.startsWith("left") ? "left" : "right";
        if (name.contains("finger") || name.contains("thumb")) {
            return side + "_knuckle";
        }
        return name.contains("toe") ? side + "_toe" : name;
    }

    private static List<TrueContact> contacts(JsonNode truth) {
        List<TrueContact> contacts = new ArrayList<>();
        for (JsonNode c : truth.get("contacts")) {
            double touchdown = c.get("touchdown_s").asDouble();
            double toeOff = c.get("toeoff_s").asDouble();
            ContactKind kind = ContactKind.valueOf(c.get("kind").asText().toUpperCase(Locale.ROOT));
            Foot foot = c.get("foot").asText().equals("L") ? Foot.LEFT : Foot.RIGHT;
            double heelOff = (touchdown + toeOff) / 2;
            contacts.add(new TrueContact(
                    kind, foot, touchdown, heelOff, toeOff, c.get("toe_x_m").asDouble()));
        }
        JsonNode pit = truth.get("pit");
        double landing = pit.get("landing_s").asDouble();
        double mark = pit.get("mark_x_m").asDouble();
        contacts.add(new TrueContact(ContactKind.PIT, Foot.BOTH, landing, landing, Double.NaN, mark));
        return List.copyOf(contacts);
    }

    @Override
    public List<TrueContact> contacts() {
        return contacts;
    }

    /** The contact of a kind. */
    public TrueContact contact(ContactKind kind) {
        return contacts.stream().filter(c -> c.kind() == kind).findFirst().orElseThrow();
    }

    @Override
    public double statureM() {
        return statureM;
    }

    @Override
    public double endS() {
        return timesS[timesS.length - 1];
    }

    @Override
    public double[] hips(double timeS) {
        double[][] p = points(timeS);
        double[] l = p[BodyPoint.LEFT_HIP.index()];
        double[] r = p[BodyPoint.RIGHT_HIP.index()];
        return new double[] {(l[0] + r[0]) / 2, (l[2] + r[2]) / 2};
    }

    /** Between frames on a straight line. */
    @Override
    public double[][] points(double timeS) {
        int i = 0;
        while (i + 2 < timesS.length && timesS[i + 1] <= timeS) {
            i++;
        }
        double u = Math.max(0, Math.min(1, (timeS - timesS[i]) / (timesS[i + 1] - timesS[i])));
        double[][] p = new double[BodyPoint.COUNT][3];
        for (int k = 0; k < p.length; k++) {
            for (int d = 0; d < 3; d++) {
                p[k][d] = (1 - u) * places[i][k][d] + u * places[i + 1][k][d];
            }
        }
        return p;
    }

    /**
     * The same jump with another posture. In the flights the body is moved so that its centre of mass still falls freely: what an
     * alteration does to the centre beyond a straight line over the flight is taken back.
     */
    public RenderedJumper altered(Alteration alteration) {
        double[][][] after = new double[places.length][][];
        for (int f = 0; f < places.length; f++) {
            after[f] = alteredAt(alteration, timesS[f]);
        }
        for (int c = 0; c + 1 < contacts.size(); c++) {
            double fromS = contacts.get(c).toeOffS();
            double toS = contacts.get(c + 1).touchdownS();
            Point2 atStart = moved(alteration, fromS);
            Point2 atEnd = moved(alteration, toS);
            for (int f = 0; f < places.length; f++) {
                double u = (timesS[f] - fromS) / (toS - fromS);
                if (u > 0 && u < 1) {
                    Point2 wanted = atStart.times(1 - u).plus(atEnd.times(u));
                    shift(after[f], wanted.minus(moved(alteration, timesS[f])));
                }
            }
        }
        return new RenderedJumper(timesS, after, contacts, statureM);
    }

    private double[][] alteredAt(Alteration alteration, double timeS) {
        double[][] p = points(timeS);
        alteration.alter(timeS, p);
        return p;
    }

    private Point2 moved(Alteration alteration, double timeS) {
        return centre(alteredAt(alteration, timeS)).minus(centre(points(timeS)));
    }

    private static Point2 centre(double[][] p) {
        return CENTRE.of(b -> new Point2(p[b.index()][0], p[b.index()][2])).place();
    }

    private static void shift(double[][] p, Point2 by) {
        for (double[] place : p) {
            place[0] += by.x();
            place[2] += by.y();
        }
    }
}
