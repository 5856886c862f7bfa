package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;

import org.collarbook.compliance.Requirements;
import org.collarbook.platform.Inputs;
import org.collarbook.registry.stamps.CollarReading;
import org.collarbook.regulation.Collar;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/fill-check", produces = "application/json")
@Tag(name = "Compliance")
class FillCheckController {

    private final ContainerFinder finder;
    private final Liquids liquids;
    private final FillCheck check;
    private final Requirements requirements;
    private final Clock clock;

    FillCheckController(ContainerFinder finder, Liquids liquids, FillCheck check, Requirements requirements,
            Clock clock) {
        this.finder = finder;
        this.liquids = liquids;
        this.check = check;
        this.requirements = requirements;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "May this container be filled now, and to what weight?", description = """
            Name the container by `tag`, or by `serial` and as much of `specification` and `maker` as was read, and \
            what is to go in by `product` or by the `specificGravity` of the liquid at 60 °F: without either there is \
            no maximum and no yes. The answer is yes only when every clock, mark and permission allows it; it carries \
            all reasons with their citations. With `liquidTemperatureF` the volume is given at that temperature too.""")
    ResponseEntity<FillCheckAnswer> check(@RequestParam(required = false) @Nullable String tag,
            @RequestParam(required = false) @Nullable String serial,
            @RequestParam(required = false) @Nullable String specification,
            @RequestParam(required = false) @Nullable String maker,
            @RequestParam(required = false) @Nullable String product,
            @RequestParam(required = false) @Nullable BigDecimal specificGravity,
            @RequestParam(required = false) @Nullable BigDecimal liquidTemperatureF) {
        var inputs = new Inputs();
        var asked = WhichContainer.read("", tag, serial, specification, maker, inputs);
        var liquid = liquids.read("", product, specificGravity, liquidTemperatureF, inputs);
        inputs.done();
        var known = finder.one(asked);
        var beside = liquids.into(known, liquid, null, clock.instant());
        return answer(FillCheckAnswer.from(check.judge(known, beside, requirements.today(known)), null));
    }

    @PostMapping(consumes = "application/json")
    @Operation(summary = "The same for a stamp as read, line by line", description = """
            The container is found by the `tag`, or by the serial number among the `lines`. Each line is compared with \
            what is recorded: one that contradicts it, or that cannot be read, refuses the fill; a requalification \
            mark that is not recorded does so where with the mark no fill were allowed. Nothing is stored.""")
    ResponseEntity<FillCheckAnswer> check(@RequestBody StampedQuestion question) {
        var inputs = new Inputs();
        var lines = CollarReading.checked(question.lines(), inputs);
        var tag = WhichContainer.tag("/", question.tag(), inputs);
        var liquid = liquids.read("/", question.product(), question.specificGravity(), question.liquidTemperatureF(),
                inputs);
        inputs.done();
        var collar = CollarReading.of(lines, Collar.unknown(LocalDate.now(clock)));
        var known = finder.one(tag, collar);
        var stamp = StampComparison.of(collar, known);
        var beside = liquids.into(known, liquid, null, clock.instant());
        return answer(FillCheckAnswer.from(check.judge(known, beside, requirements.today(known), stamp), stamp));
    }

    private static ResponseEntity<FillCheckAnswer> answer(FillCheckAnswer answer) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(answer);
    }
}
