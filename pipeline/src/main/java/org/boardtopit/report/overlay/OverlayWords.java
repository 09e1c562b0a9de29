package org.boardtopit.report.overlay;

import java.util.List;
import org.boardtopit.clips.Label;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.Quality;
import org.boardtopit.phases.Phase;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** Everything that is written into pictures, in one language, numbers with its decimal sign. */
public final class OverlayWords {
    private final Language language;
    private final Words words;
    private final Words terms;

    /** In this language. */
    public OverlayWords(Language language) {
        this.language = language;
        words = Words.of("overlay", language);
        terms = Words.of("terms", language);
    }

    /** Who competes, by the number on the chest. */
    public String bib(String bib) {
        return words.format("bib", bib);
    }

    public String attempt(int number) {
        return words.format("attempt", Integer.toString(number));
    }

    public String quality(Quality quality) {
        return words.format("quality", term("quality", quality));
    }

    /** {@code 6.01 m}. */
    public String metres(double value) {
        return words.format("metres", decimal(value, 2));
    }

    /** {@code 36.2 %}. */
    public String perCent(double value) {
        return words.format("per_cent", decimal(value, 1));
    }

    /** {@code 2.18 s}. */
    public String seconds(double value) {
        return words.format("seconds", decimal(value, 2));
    }

    /** {@code hop}, or {@code hop 2} where there are several. */
    public String phase(Phase phase) {
        String name = term("phase", phase.name());
        return phase.number() == 0 ? name : words.format("phase", name, Integer.toString(phase.number()));
    }

    /** What a contact of an attempt is called; those of a drill are told by their number in the table. */
    public String contact(ContactKind kind, int number) {
        return kind == ContactKind.DRILL ? words.format("contact", Integer.toString(number)) : term("contact", kind);
    }

    public String foot(Foot foot) {
        return term("foot", foot);
    }

    /** Above the athlete at a touchdown: {@code hop landing L}. */
    public String figure(String contact, Foot foot) {
        return words.format("figure", contact, foot(foot));
    }

    /** Beside a mark: {@code hop landing L 2.18 s}. */
    String touchdown(String contact, String foot, double timeS) {
        return words.format("touchdown", contact, foot, decimal(timeS, 2));
    }

    /** Beside a mark: {@code off 2.31 s}. */
    String toeOff(double timeS) {
        return words.format("toe_off", decimal(timeS, 2));
    }

    /** {@code knee 152°}, {@code trunk +7°}. */
    String angle(AngleCallout.Angle angle, double valueDeg) {
        String value = String.format(
                language.locale(), angle == AngleCallout.Angle.TRUNK ? "%+d" : "%d", Math.round(valueDeg));
        return words.format("angle", terms.get("angle." + angle.text()), value);
    }

    /**
     * Time and number of a frame: {@code 2.183 s   frame  131}.
     *
     * @param digits room for the number, so that nothing beside it moves
     */
    public String clock(double timeS, int frame, int digits) {
        return words.format("clock", decimal(timeS, 3), String.format(language.locale(), "%" + digits + "d", frame));
    }

    /** Under an enlarged view. */
    public String closeView(double zoom) {
        return words.format("close_view", decimal(zoom, 1));
    }

    /** Of the signs: limbs on the near side, on the far side, touchdown, toe-off. */
    public List<String> legend() {
        return List.of(words.get("near"), words.get("far"), words.get("legend.touchdown"), words.get("legend.toe_off"));
    }

    private String term(String column, Label label) {
        return terms.get(column + "." + label.label());
    }

    private String decimal(double value, int decimals) {
        return String.format(language.locale(), "%." + decimals + "f", value);
    }
}
