package org.collarbook.access;

import java.io.IOException;
import java.util.List;

import org.collarbook.platform.Problem;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.security.authorization.AuthorityAuthorizationManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

import jakarta.servlet.DispatcherType;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.json.JsonMapper;

/** Default deny: {@link Doors} is the whole of what may be reached. */
@Configuration(proxyBeanMethods = false)
class SecurityConfiguration implements WebMvcConfigurer {

    private final JsonMapper json;

    SecurityConfiguration(JsonMapper json) {
        this.json = json;
    }

    @Override
    public void addArgumentResolvers(
            List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(new CallerArgument());
    }

    @Bean
    SecurityFilterChain doors(HttpSecurity http, Keys keys) {
        return http.sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                // no cookies, so nothing a foreign page could ride on
                .csrf(AbstractHttpConfigurer::disable).formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable).logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable).anonymous(AbstractHttpConfigurer::disable)
                .addFilterBefore(new KeyFilter(keys), AuthorizationFilter.class).authorizeHttpRequests(requests -> {
                    // a streamed answer was let in before it began
                    requests.dispatcherTypeMatchers(DispatcherType.ASYNC, DispatcherType.ERROR).permitAll();
                    Doors.OPEN.forEach(path -> requests.requestMatchers(path).permitAll());
                    Doors.TABLE.forEach(door -> methods(door).forEach(method -> requests
                            .requestMatchers(method, door.path()).access(AuthorityAuthorizationManager
                                    .hasAnyAuthority(door.roles().stream().map(Role::word).toArray(String[]::new)))));
                    requests.anyRequest().denyAll();
                })
                .exceptionHandling(refusals -> refusals
                        .authenticationEntryPoint((request, response, reason) -> unauthenticated(response))
                        .accessDeniedHandler((request, response, reason) -> write(response,
                                Problem.of(HttpStatus.FORBIDDEN, "FORBIDDEN", "This key's roles do not open "
                                        + request.getMethod() + " " + request.getRequestURI() + "."))))
                .build();
    }

    /** Who may read may also ask for the head of what is read. */
    private static List<HttpMethod> methods(Doors.Door door) {
        return door.method() == HttpMethod.GET ? List.of(HttpMethod.GET, HttpMethod.HEAD) : List.of(door.method());
    }

    private void unauthenticated(HttpServletResponse response) throws IOException {
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE, "Bearer");
        write(response, Problem.of(HttpStatus.UNAUTHORIZED, "KEY_REQUIRED",
                "Send a valid API key as \"Authorization: Bearer cb_…\". Keys are issued by an administrator."));
    }

    private void write(HttpServletResponse response, Problem problem) throws IOException {
        response.setStatus(problem.status().value());
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.setCharacterEncoding("UTF-8");
        json.writeValue(response.getOutputStream(), problem.body());
    }
}
