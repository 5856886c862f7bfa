package org.collarbook.access;

import java.util.List;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.http.HttpMethod;
import org.springframework.security.authorization.AuthorityAuthorizationManager;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.AbstractHttpConfigurer;
import org.springframework.security.config.annotation.web.configurers.AuthorizeHttpRequestsConfigurer;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.security.web.header.HeaderWriterFilter;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

import jakarta.servlet.DispatcherType;

/** Default deny: {@link Doors} is the whole of what may be reached. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(AccessSettings.class)
class SecurityConfiguration implements WebMvcConfigurer {

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(new CallerArgument());
    }

    @Bean
    SecurityFilterChain doors(HttpSecurity http, AccessSettings settings, Keys keys, Tokens tokens, Guesses guesses,
            Rates rates, AccessLog log, Strangers strangers, ProblemAnswers problems) {
        var closed = new ClosedDoors(problems);
        return http.sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                // no cookies, so nothing a foreign page could ride on
                .csrf(AbstractHttpConfigurer::disable).formLogin(AbstractHttpConfigurer::disable)
                .httpBasic(AbstractHttpConfigurer::disable).logout(AbstractHttpConfigurer::disable)
                .requestCache(AbstractHttpConfigurer::disable).anonymous(AbstractHttpConfigurer::disable)
                .headers(AnswerHeaders::write).cors(cors -> AnswerHeaders.cors(cors, settings.corsOrigins()))
                // outside of all that may refuse; then who it is, and how often
                .addFilterAfter(new AccessLogFilter(log, strangers), HeaderWriterFilter.class)
                .addFilterBefore(new KeyFilter(keys, tokens, guesses, problems), AuthorizationFilter.class)
                .addFilterAfter(new RateFilter(rates, problems), KeyFilter.class)
                .authorizeHttpRequests(SecurityConfiguration::open)
                .exceptionHandling(refused -> refused.authenticationEntryPoint(closed).accessDeniedHandler(closed))
                .build();
    }

    private static void open(
            AuthorizeHttpRequestsConfigurer<HttpSecurity>.AuthorizationManagerRequestMatcherRegistry requests) {
        // a streamed answer was let in before it began
        requests.dispatcherTypeMatchers(DispatcherType.ASYNC, DispatcherType.ERROR).permitAll();
        Doors.OPEN.forEach(path -> List.of(HttpMethod.GET, HttpMethod.HEAD)
                .forEach(method -> requests.requestMatchers(method, path).permitAll()));
        Doors.TABLE.forEach(door -> door.methods().forEach(method -> requests.requestMatchers(method, door.path())
                .access(AuthorityAuthorizationManager
                        .hasAnyAuthority(door.roles().stream().map(Role::word).toArray(String[]::new)))));
        requests.anyRequest().denyAll();
    }
}
