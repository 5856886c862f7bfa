package org.collarbook.schedule.forecast;

import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/forecasts", produces = "application/json")
@Tag(name = "Schedule")
class ForecastController {

    private final Forecasts forecasts;
    private final FleetRows fleet;

    ForecastController(Forecasts forecasts, FleetRows fleet) {
        this.forecasts = forecasts;
        this.fleet = fleet;
    }

    @PostMapping
    @Operation(summary = "What will fall due, by month for years ahead, when cylinders are requalified by one method or another", description = """
            A question: nothing is stored. Each container is played through under the rules: in the month in which it \
            falls due it is taken to be done and to pass, the rules are asked anew, and so on through the last month. \
            Values of rules that begin ahead are followed. What is overdue, used up included, falls into the first month \
            and is counted in `overdueNow`. \
            The method is for the shell of cylinders: `AS_LAST` does each as it was last, and one that never was by \
            the expansion test (`noLastMethod`). Where the rules of a cylinder do not take the method, it is counted in \
            `methodNotAccepted` and done as it was last, else by the expansion test, else by the first that its rules \
            take. Everything else is done as it was last; \
            `work` tells what is done. What the rules ask of a container that stays as it is recorded is forecast: no \
            rejects, no purchases. A container whose service life ends is counted in `leaving`, of which nothing \
            falls due afterwards. A forecast is no permission: the date and a look at the container decide, each \
            time.""")
    ForecastAnswer forecast(@RequestBody ForecastRequest request) {
        return forecasts.answer(request.read(fleet));
    }
}
