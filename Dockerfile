# Two stages from the same package lists as every other build: compile, then only what runs. The default is the service: it watches
# /in and writes to /out as user 10001, with a read-only root and no network (docs/service.md).
FROM debian:12-slim AS build
WORKDIR /gownsheaf
COPY src/setup src/setup
RUN sh src/setup/install.sh build run
COPY . .
RUN cmake -S . -B build -G Ninja -DCMAKE_BUILD_TYPE=Release -DGOWNSHEAF_TESTS=OFF -DGOWNSHEAF_TOGETHER=ON \
      -DGOWNSHEAF_TEMPLATE_ROOT=/usr/local/share/gownsheaf/packet-templates \
 && cmake --build build && cmake --install build --prefix /usr/local

FROM debian:12-slim
COPY src/setup/install.sh src/setup/packages-run.txt /tmp/setup/
RUN sh /tmp/setup/install.sh run && rm -rf /tmp/setup /var/lib/apt/lists/* \
 && useradd --create-home --uid 10001 maker
COPY --from=build /usr/local/bin/gownsheaf /usr/local/bin/gownsheaf
COPY --from=build /usr/local/share/gownsheaf /usr/local/share/gownsheaf
RUN mkdir /in /out /work && chown maker: /out /work
USER 10001:10001
VOLUME ["/in", "/out"]
WORKDIR /work
STOPSIGNAL SIGTERM
# Written as lists, so that the program is process 1 and hears the signal itself.
ENTRYPOINT ["gownsheaf"]
CMD ["watch", "/in", "--out", "/out"]
