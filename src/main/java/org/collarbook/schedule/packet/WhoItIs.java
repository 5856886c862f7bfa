package org.collarbook.schedule.packet;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.Containers;
import org.collarbook.registry.Declarations;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.IdentityEntry;
import org.collarbook.registry.IdentityHistory;
import org.collarbook.registry.PlaceClaims;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Tags;
import org.collarbook.registry.fittings.Stops;
import org.collarbook.registry.web.ContainerResponse;
import org.collarbook.registry.web.CorrectionResponse;
import org.collarbook.registry.web.IdentityActResponse;
import org.collarbook.schedule.packet.ContainerPacket.Declared;
import org.collarbook.schedule.packet.ContainerPacket.PacketIdentity;
import org.springframework.stereotype.Component;

/** Which container it is, by what is stamped on it and by what was done about that. */
@Component
class WhoItIs {

    private final Containers containers;
    private final Absorbed absorbed;
    private final Tags tags;
    private final IdentityHistory history;
    private final Declarations declarations;
    private final Stops stops;
    private final PlaceClaims claims;

    WhoItIs(Containers containers, Absorbed absorbed, Tags tags, IdentityHistory history, Declarations declarations,
            Stops stops, PlaceClaims claims) {
        this.containers = containers;
        this.absorbed = absorbed;
        this.tags = tags;
        this.history = history;
        this.declarations = declarations;
        this.stops = stops;
        this.claims = claims;
    }

    PacketIdentity of(KnownContainer known) {
        var container = known.container();
        var id = container.id();
        var corrections = new ArrayList<CorrectionResponse>();
        var acts = new ArrayList<IdentityActResponse>();
        for (var one : Stream.concat(Stream.of(id), absorbed.by(id).stream()).toList()) {
            for (var entry : Whole.page("its identity", one, "identity", rows -> history.of(one, null, rows))) {
                switch (entry) {
                    case IdentityEntry.Corrected(var done) -> corrections.add(CorrectionResponse.from(done));
                    case IdentityEntry.Acted(var done) -> acts.add(IdentityActResponse.from(done));
                }
            }
        }
        return new PacketIdentity(response(container),
                known.declarers().stream().map(this::declared).toList(), tags.borneBy(id), merged(id), corrections,
                acts.stream().distinct().toList());
    }

    private ContainerResponse response(RegisteredContainer container) {
        var id = container.id();
        return ContainerResponse.from(container, stops.standing(List.of(id)).get(id), claims.of(List.of(id)).get(id),
                null);
    }

    private List<ContainerResponse> merged(UUID into) {
        return absorbed.by(into).stream()
                .map(id -> ContainerResponse.from(containers.require(id), null, null, into)).toList();
    }

    private Declared declared(KnownContainer.Declarer by) {
        var said = declarations.find(by.declaration()).orElseThrow();
        return new Declared(by.declaration(), by.name(), by.declaredOn(), said.statement(),
                by.facts().stream().sorted().map(DeclarableFact::word).toList());
    }
}
