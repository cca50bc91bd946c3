<?php
// WordPress loads this before every answer. Whatever would ask another host gets an error instead.

add_filter('pre_http_request', fn() => new WP_Error('offline', 'This site asks nobody.'));
add_filter('wp_resource_hints', fn() => []);
add_filter('pre_option_show_avatars', fn() => '0');
