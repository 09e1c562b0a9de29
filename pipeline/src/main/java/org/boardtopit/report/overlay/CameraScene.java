package org.boardtopit.report.overlay;

import java.util.List;
import org.boardtopit.signal.Point2;

/**
 * What is drawn on a camera's reference picture so that a person sees whether its marks are right. Places are pixels of that
 * picture.
 *
 * @param headings lines of text for the top left corner
 */
public record CameraScene(List<String> headings, List<SceneMark> marks, List<SceneLine> lines) {

    /**
     * A mark.
     *
     * @param clicked where the table has it
     * @param predicted where the other marks say it is; unknown when they cannot
     * @param off true when the two are too far apart
     * @param farSide true for marks beyond the middle of the runway, whose names stand above it
     */
    public record SceneMark(String name, Point2 clicked, Point2 predicted, boolean off, boolean farSide) {}

    /**
     * A line on the runway.
     *
     * @param label written at its end; empty for none
     * @param strong true for the lines a person looks for: board, pit, edges of the runway
     */
    public record SceneLine(Point2 from, Point2 to, String label, boolean strong) {}

    public CameraScene {
        headings = List.copyOf(headings);
        marks = List.copyOf(marks);
        lines = List.copyOf(lines);
    }
}
