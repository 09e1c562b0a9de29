package org.boardtopit.run;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.BeanProperty;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JavaType;
import com.fasterxml.jackson.databind.JsonDeserializer;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.ContextualDeserializer;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Label;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;

/**
 * Records as JSON and back, unchanged: every component and nothing else, doubles to the last bit, NaN as a word, empty
 * Optionals as null, paths as the user wrote them. In ASCII on one line, so that any stream can carry it.
 */
public final class RecordJson {
    private static final JsonMapper MAPPER = mapper();

    private RecordJson() {}

    /** The one mapper; it is not changed by anyone. */
    public static JsonMapper mapperOfRecords() {
        return MAPPER;
    }

    private static JsonMapper mapper() {
        SimpleModule types = new SimpleModule();
        types.addSerializer(new OptionalOut());
        types.addDeserializer(Optional.class, new OptionalIn(null));
        types.addSerializer(new OptionalIntOut());
        types.addDeserializer(OptionalInt.class, new OptionalIntIn());
        types.addSerializer(Path.class, new ToStringSerializer());
        types.addDeserializer(Path.class, new PathIn());
        types.addSerializer(LocalDate.class, new ToStringSerializer());
        types.addDeserializer(LocalDate.class, new DateIn());
        types.addDeserializer(Label.class, new PhaseIn());
        return JsonMapper.builder()
                .addModule(types)
                .visibility(PropertyAccessor.GETTER, Visibility.NONE)
                .visibility(PropertyAccessor.IS_GETTER, Visibility.NONE)
                .visibility(PropertyAccessor.FIELD, Visibility.ANY)
                .enable(JsonWriteFeature.ESCAPE_NON_ASCII)
                .enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS)
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .build();
    }

    private static final class OptionalOut extends StdSerializer<Optional<?>> {
        private static final long serialVersionUID = 1L;

        OptionalOut() {
            super(Optional.class, false);
        }

        @Override
        public void serialize(Optional<?> value, JsonGenerator out, SerializerProvider provider) throws IOException {
            provider.defaultSerializeValue(value.orElse(null), out);
        }
    }

    private static final class OptionalIn extends StdDeserializer<Optional<?>> implements ContextualDeserializer {
        private static final long serialVersionUID = 1L;

        private final JavaType content;

        OptionalIn(JavaType content) {
            super(Optional.class);
            this.content = content;
        }

        @Override
        public JsonDeserializer<?> createContextual(DeserializationContext context, BeanProperty property) {
            return new OptionalIn(context.getContextualType().containedTypeOrUnknown(0));
        }

        @Override
        public Optional<?> deserialize(JsonParser in, DeserializationContext context) throws IOException {
            Object value = context.readValue(in, content);
            return Optional.ofNullable(value);
        }

        @Override
        public Optional<?> getNullValue(DeserializationContext context) {
            return Optional.empty();
        }
    }

    private static final class OptionalIntOut extends StdSerializer<OptionalInt> {
        private static final long serialVersionUID = 1L;

        OptionalIntOut() {
            super(OptionalInt.class);
        }

        @Override
        public void serialize(OptionalInt value, JsonGenerator out, SerializerProvider provider) throws IOException {
            if (value.isPresent()) {
                out.writeNumber(value.getAsInt());
            } else {
                out.writeNull();
            }
        }
    }

    private static final class OptionalIntIn extends StdDeserializer<OptionalInt> {
        private static final long serialVersionUID = 1L;

        OptionalIntIn() {
            super(OptionalInt.class);
        }

        @Override
        public OptionalInt deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return OptionalInt.of(in.getIntValue());
        }

        @Override
        public OptionalInt getNullValue(DeserializationContext context) {
            return OptionalInt.empty();
        }
    }

    private static final class PathIn extends StdDeserializer<Path> {
        private static final long serialVersionUID = 1L;

        PathIn() {
            super(Path.class);
        }

        @Override
        public Path deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return Path.of(in.getText());
        }
    }

    private static final class DateIn extends StdDeserializer<LocalDate> {
        private static final long serialVersionUID = 1L;

        DateIn() {
            super(LocalDate.class);
        }

        @Override
        public LocalDate deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return LocalDate.parse(in.getText());
        }
    }

    /** Labels that are not of one type are those of phases: a name, or a flight of a drill. */
    private static final class PhaseIn extends StdDeserializer<Label> {
        private static final long serialVersionUID = 1L;

        PhaseIn() {
            super(Label.class);
        }

        @Override
        public Label deserialize(JsonParser in, DeserializationContext context) throws IOException {
            if (in.hasToken(JsonToken.VALUE_STRING)) {
                return context.readValue(in, PhaseName.class);
            }
            return context.readValue(in, Phase.class);
        }
    }
}
