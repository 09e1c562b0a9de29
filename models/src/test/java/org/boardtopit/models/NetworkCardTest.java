package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NetworkCardTest {
    static final String CARD = """
            {
              "name": "mine", "title": "Mine", "file": "mine.pt",
              "sha256": "0000000000000000000000000000000000000000000000000000000000000000",
              "input": { "sizePx": 64, "channels": "bgr", "layout": "nchw", "values": "floats",
                         "scale": [1, 1, 1], "offset": [-127.5, -127.5, -127.5] },
              "output": { "kind": "points", "tensor": 0, "numbersPerPoint": 3, "unit": "pixels",
                          "score": 2, "scoreAs": "probability", "sdPx": 5 },
              "points": ["LEFT_KNEE", null, "RIGHT_KNEE"],
              "sdFactor": 1, "references": [], "licence": "MIT", "sources": [], "training": "", "limits": []
            }
            """;

    @Test
    void readsACardOfPlainPoints() throws NetworkUnfitException {
        NetworkCard card = NetworkCard.parse(CARD, "mine/card.json");

        assertEquals("mine", card.name());
        assertEquals(NetworkCard.Layout.nchw, card.input().layout());
        assertEquals(5, ((NetworkCard.PlainPoints) card.output()).sdPx());
        assertNull(card.points().get(1));
        assertTrue(card.readsLandmarks());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"name\": \"mine\"       | \"name\": \"My net\"       | name must match",
                "\"MIT\"                  | \"MIT\", \"colour\": 1   | there is no key colour",
                "\"name\": \"mine\",      | \"\"                       | Unexpected character",
                "\"file\": \"mine.pt\"    | \"file\": \"../mine.pt\"   | file must match",
                "\"sizePx\": 64           | \"sizePx\": 4              | input.sizePx must be 32 to 1024",
                "\"bgr\"                  | \"rbg\"                    | rbg",
                "[1, 1, 1]                | [1, 1]                     | input.scale must have three numbers",
                "\"points\", \"tensor\"   | \"lines\", \"tensor\"      | lines",
                "\"sdPx\": 5              | \"sdPx\": 0                | output.sdPx must be more than 0",
                "\"score\": 2             | \"score\": 3               | output.score must be 2 to numbersPerPoint - 1",
                "null, \"RIGHT_KNEE\"     | null, \"LEFT_KNEE\"        | LEFT_KNEE is named twice",
                "\"RIGHT_KNEE\"           | \"RIGHT_KNE\"              | RIGHT_KNE",
                "\"sdFactor\": 1          | \"sdFactor\": 0            | sdFactor must be in",
            })
    void saysWhatIsWrongInTheCardAndWhere(String right, String wrong, String message) {
        String json = CARD.replace(right, wrong);
        assertTrue(!json.equals(CARD), right);

        NetworkUnfitException e =
                assertThrows(NetworkUnfitException.class, () -> NetworkCard.parse(json, "mine/card.json"));

        assertTrue(e.getMessage().startsWith("mine/card.json:"), e.getMessage());
        assertTrue(e.getMessage().contains(message), e.getMessage());
        assertEquals(1, e.getMessage().lines().count(), e.getMessage());
    }

    @Test
    void saysWhichKeyIsMissing() {
        NetworkUnfitException e = assertThrows(
                NetworkUnfitException.class,
                () -> NetworkCard.parse(CARD.replace("\"sdFactor\": 1,", ""), "mine/card.json"));

        assertTrue(e.getMessage().contains("key sdFactor is missing"), e.getMessage());
    }
}
